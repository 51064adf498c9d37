using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Everything that could still be looked at and would tell of years: the checklist's open questions, an address, words, a form that the photo leaves open, the style of the lettering.</summary>
/// <param name="references">The list.</param>
/// <param name="options">Bounds.</param>
internal sealed class DateQuestions(ReferenceList references, EvidenceOptions options)
{
    private const int MostNamed = 3;

    /// <summary>A form less probable than this is not waited for.</summary>
    private const double LeastProbable = 0.01;

    internal IEnumerable<DateQuestion> Open(Reading reading, Finding finding, ImmutableArray<DateStatement> statements, ConstructionTable table, ConstructionRecord? record)
    {
        ReferenceForm[] house = [.. references.Forms.Where(row => row.Maker == finding.Leading?.Form.Maker)];
        return [.. Checklist(table, record), .. Address(house, statements), .. Words(statements), .. HouseWords(house, statements), .. Form(finding, statements), .. Style(reading)];
    }

    private static IEnumerable<DateQuestion> Checklist(ConstructionTable table, ConstructionRecord? record) => table.Rows
        .GroupBy(row => row.Feature)
        .Where(question => record is null || record.Seen.All(seen => seen.Feature != question.Key))
        .Where(question => question.Any(answer => answer.IsDated))
        .Select(question => new DateQuestion.Always($"{question.First().Question} (of the {question.First().Part})", [.. question.Select(answer => new DateAnswer(answer.Years, answer.Coverage))]));

    private IEnumerable<DateQuestion> Address(ReferenceForm[] house, ImmutableArray<DateStatement> statements)
    {
        if (statements.Any(statement => statement.Kind is DateKind.Address or DateKind.AddressOfOthers))
        {
            return [];
        }

        var streets = house.Where(row => row is { Status: AttestationStatus.Attested, Address: not null }).GroupBy(row => RowYears.Street(row.Address!)).ToArray();
        return Found($"whether an address is cut anywhere on the piece ({Named(streets.Select(street => $"'{street.Key}'"))} in the list)", streets.Select(street => RowYears.Of(street)), options.AddressShare);
    }

    private IEnumerable<DateQuestion> Words(ImmutableArray<DateStatement> statements)
    {
        var open = EvidenceTables.Wordings.Where(wording => statements.All(statement => statement.What != Dater.WordsOf(wording))).ToArray();
        return Found(
            $"whether any other part has words that tell of a first year ({Named(open.Select(wording => $"'{wording.Words}'"))} and others)",
            open.Select(wording => wording.NotBefore).Distinct().Select(year => ((DateInterval, double)?)(new DateInterval(year, null), DatedWording.Coverage)),
            options.WordingShare);
    }

    private IEnumerable<DateQuestion> HouseWords(ReferenceForm[] house, ImmutableArray<DateStatement> statements)
    {
        var open = house.Where(row => row.Wording is not null).GroupBy(row => row.Wording!).Where(rows => statements.All(statement => statement.What != Dater.WordsOf(rows.Key, rows.First().Maker))).ToArray();
        return Found($"whether the house's words are cut anywhere on the piece ({Named(open.Select(rows => $"'{rows.Key}'"))})", open.Select(rows => RowYears.Of(rows)), options.WordingShare);
    }

    /// <summary>Which of the house's forms is cut, where this photo leaves it open: each as probable as the photo makes it.</summary>
    private IEnumerable<DateQuestion> Form(Finding finding, ImmutableArray<DateStatement> statements)
    {
        if (finding is not { Outcome: FindingOutcome.Undecided, Leading: { Span: { } span } leading } || statements.Any(statement => statement.Kind == DateKind.Form))
        {
            return [];
        }

        var judging = new JudgeOptions();
        var standing = new FormStanding(leading, judging);
        var forms = finding.Nearest
            .Where(near => near.Form.Maker == leading.Form.Maker && near.Form.Status != AttestationStatus.Reproduction && near.Span?.Overlaps(span) == true)
            .Where(near => near.Agreement.Value >= LeastProbable && !new FormStanding(near, judging).IsPartOf(standing))
            .ToArray();
        var distinct = forms.Where((near, at) => !forms.Take(at).Any(before => before.Form.Status == near.Form.Status && RowYears.SameSpelling(before.Form.Form, near.Form.Form))).ToArray();
        var sum = Math.Max(1, distinct.Sum(near => near.Agreement.Value));
        ImmutableArray<DateAnswer> answers =
        [
            .. from near in distinct
               let dated = RowYears.Of(RowYears.Like(near.Form, references))
               where dated is not null
               select new DateAnswer(dated.Value.Years, dated.Value.Coverage, near.Agreement.Value / sum),
        ];
        return answers.IsEmpty ? [] : [new DateQuestion.AsSeen($"a nearer or better lit photo of the letters that this one leaves open, so that it shows whether '{leading.Form.Form}' is cut", answers)];
    }

    private IEnumerable<DateQuestion> Style(Reading reading)
    {
        if (reading.Style is [var first, ..] && first.Probability.Value >= options.KnownStyle)
        {
            return [];
        }

        double Weight(string style) => reading.Style.IsEmpty ? 1 : reading.Style.FirstOrDefault(seen => seen.Style == style)?.Probability.Value ?? 0;
        ImmutableArray<DateAnswer> answers =
        [
            .. from style in ReferenceField.Styles
               where Weight(style) > 0
               let row = EvidenceTables.Styles.FirstOrDefault(row => row.Style == style)
               select row is null ? new DateAnswer(default, 1, Weight(style)) : new DateAnswer(row.Years, row.Coverage, Weight(style)),
        ];
        return answers.Length < 2 ? [] : [new DateQuestion.Always("the style of the lettering, in a photo that shows whole letters large", answers)];
    }

    private static IEnumerable<DateQuestion> Found(string what, IEnumerable<(DateInterval Years, double Coverage)?> found, double share)
    {
        ImmutableArray<DateAnswer> answers = [.. found.OfType<(DateInterval Years, double Coverage)>().Select(row => new DateAnswer(row.Years, row.Coverage))];
        return answers.IsEmpty ? [] : [new DateQuestion.Sometimes(what, answers, share)];
    }

    private static string Named(IEnumerable<string> names) => string.Join(", ", names.Take(MostNamed));
}
