using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.References;

namespace InscriptionLab.Assess.Findings;

/// <summary>
/// Runs the whole examination on each lettered tube of a folder and holds the findings against the truth. The list is the demonstration list with its
/// attested forms alone, so that no misspelling is known beforehand.
/// </summary>
internal sealed class FindingAssessor(Composition composition, string folder, TextWriter progress)
{
    /// <summary>Height of lettering from which every misspelling is to be named.</summary>
    private const double ReadableHeight = 20;

    internal FindingTable Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var list = DemoReferences.Load();
        list = list with { Forms = [.. list.Forms.Where(form => form.Status == AttestationStatus.Attested)] };
        var cases = ImmutableArray.CreateBuilder<FindingCase>();
        foreach (var group in truths.Where(truth => truth.Maker is not null && truth.Kind is "tube" or "raking" or "turn" or "trap" && truth.Lines.Length > 0).GroupBy(truth => truth.Set ?? truth.File, StringComparer.Ordinal))
        {
            cases.AddRange(Run([.. group], list, cancel));
        }

        return new FindingTable(cases.ToImmutable());
    }

    private IEnumerable<FindingCase> Run(ImmutableArray<TruthPhoto> group, ReferenceList list, CancellationToken cancel)
    {
        var examiner = composition.Examiner(list);
        var members = ImmutableArray.CreateBuilder<Examination>();
        foreach (var truth in group)
        {
            progress.WriteLine(truth.File);
            members.Add(examiner.Examine(Path.Combine(folder, truth.File), cancel));
            yield return Case(truth.File, GroupOf([truth]), truth, members[^1].Finding);
        }

        if (group.Length > 1)
        {
            var kind = group[0].Kind == "raking" ? SetKind.Raking : SetKind.Turns;
            foreach (var set in composition.SetExaminer(list).Examine(members.ToImmutable(), kind, cancel))
            {
                yield return Case($"{group[0].Set} together", GroupOf(group), group[0], set.Finding);
            }
        }
    }

    private static FindingCase Case(string photo, FindingGroup group, TruthPhoto truth, Finding finding) => new(
        photo,
        group,
        truth.Maker!,
        truth.IsVariantOf ?? truth.Maker!,
        truth.XHeight ?? 0,
        finding.Outcome,
        finding.Leading?.Form.Form,
        finding.Leading is { } leading ? NamedSpelling.Of(leading) : null);

    /// <summary>What can be asked: a letter of the name counts as seen where one photo of the set shows it.</summary>
    private static FindingGroup GroupOf(ImmutableArray<TruthPhoto> photos)
    {
        if (photos[0].IsVariantOf is null)
        {
            return FindingGroup.Attested;
        }

        var (maker, lines) = (photos[0].Maker!, photos[0].Lines);
        var name = Enumerable.Range(0, lines.Length).First(line => lines[line].Contains(maker, StringComparison.Ordinal));
        var first = lines[name].IndexOf(maker, StringComparison.Ordinal);
        var letters = photos.SelectMany(photo => photo.Letters).Where(letter => letter.Line == name && letter.Index >= first && letter.Index < first + maker.Length).GroupBy(letter => letter.Index);
        return photos.Max(photo => photo.XHeight) >= ReadableHeight && letters.All(letter => letter.Any(photo => !photo.Hidden)) ? FindingGroup.Misspelt : FindingGroup.Unreadable;
    }
}
