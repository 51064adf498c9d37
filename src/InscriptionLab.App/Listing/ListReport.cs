using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Comparison;
using InscriptionLab.Outcomes;
using InscriptionLab.References;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Listing;

/// <summary>What the commands of the reference list do and print.</summary>
/// <param name="file">The list's file; null for the demonstration list.</param>
/// <param name="output">Where it is printed.</param>
/// <param name="clock">Dates changes.</param>
internal sealed class ListReport(string? file, TextWriter output, TimeProvider clock)
{
    internal void Check()
    {
        var loaded = ReferenceSource.Load(file);
        var forms = loaded.List.Forms;
        string Count(AttestationStatus status) => Invariant($"{forms.Count(form => form.Status == status)} {Words.For(status)}");
        output.WriteLine(Invariant($"{loaded.List.Name}: {Counted(forms.Length, "row", "rows")} of {Counted(forms.Select(form => form.Maker).Distinct().Count(), "house", "houses")} ({string.Join(", ", Enum.GetValues<AttestationStatus>().Select(Count))}); no errors."));
        foreach (var remark in loaded.Warnings.Concat(ReferenceListCheck.Remarks(loaded.List)))
        {
            output.WriteLine(remark);
        }
    }

    internal void Search(string words, int most)
    {
        var list = ReferenceSource.Load(file).List;
        var found = new FormSearch(new Comparer(list, new ComparerOptions { MaximumNearest = Math.Max(1, most) })).Find(words);
        if (found.IsEmpty)
        {
            output.WriteLine("No form shares two neighbouring letters with these words.");
        }

        foreach (var near in found)
        {
            output.WriteLine(Line(near.Form));
            foreach (var difference in near.SpellingDifferences)
            {
                output.WriteLine("    " + DifferenceWords.For(difference));
            }
        }
    }

    internal void Show(string house)
    {
        var list = ReferenceSource.Load(file).List;
        ReferenceForm[] rows = [.. list.Forms.Where(form => form.Maker.Equals(house, StringComparison.OrdinalIgnoreCase))];
        if (rows.Length == 0)
        {
            throw new InscriptionLabException($"{list.Name} has no house {house}; ./lab list search finds names that are near.");
        }

        var name = rows[0].Maker;
        output.WriteLine(name);
        foreach (var row in rows)
        {
            output.WriteLine("  " + Line(row));
        }

        Facts("address", rows.Where(row => row.Address is not null).GroupBy(row => row.Address!).Select(group => $"{group.Key} ({Years([.. group])})"));
        Facts("partners", rows.Select(row => row.Partners).OfType<string>().Distinct());
        Facts("succeeded", rows.Select(row => row.SuccessorOf).OfType<string>().Distinct());
        Facts("succeeded by", list.Forms.Where(form => form.SuccessorOf == name).Select(form => form.Maker).Distinct());
        Facts("words", rows.Where(row => row.Wording is not null).GroupBy(row => row.Wording!).Select(group => $"{group.Key} ({Years([.. group])})"));
        Facts("letters", rows.Where(row => row.LetterHeight is not null || row.LetterSpacing is not null).Select(LettersOf).Distinct());
        Facts("source", rows.Select(row => row.Source).OfType<string>().Distinct());
    }

    /// <summary>Adds one row; it is read as a file would be, so that its errors are told alike.</summary>
    internal void Add(IReadOnlyDictionary<string, string> fields, string by)
    {
        if (fields.Values.All(string.IsNullOrWhiteSpace))
        {
            throw new InscriptionLabException("A row needs at least --form, --maker and --status.");
        }

        static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
        var text = $"{string.Join(',', fields.Keys)}\n{string.Join(',', fields.Values.Select(Quoted))}\n";
        Merge(new ReferenceListReader().Read("the new row", Encoding.UTF8.GetBytes(text)).List.Forms, "add", by);
    }

    internal void Merge(string other, string by) => Merge(ReferenceSource.Load(other).List.Forms, $"merge {other}", by);

    internal void Import(string source, string? mapping, bool linkedArt, string status, string by)
    {
        var bytes = PieceFacts.Bytes(source, "file");
        var rows = (mapping, linkedArt) switch
        {
            ({ } map, false) => new TableImport(ImportMapping.Read(map, PieceFacts.Bytes(map, "mapping"))).Read(source, bytes),
            (null, true) => new LinkedArtImport(status).Read(source, bytes),
            _ => throw new InscriptionLabException("Say how the file is to be understood: --mapping FILE for a table, or --linked-art."),
        };
        Merge(rows, $"import {source}", by);
    }

    internal void History()
    {
        foreach (var line in Own().History().DefaultIfEmpty("Nothing was changed with ./lab list."))
        {
            output.WriteLine(line);
        }
    }

    private void Merge(ImmutableArray<ReferenceForm> rows, string what, string by)
    {
        var own = Own();
        var list = own.Load();
        var merged = ReferenceListMerger.Merge(list.Forms, rows);
        if (!merged.Changes.IsEmpty)
        {
            own.Save(list with { Forms = merged.Forms }, merged.Changes, what, by);
        }

        foreach (var contradiction in merged.Contradictions)
        {
            output.WriteLine(contradiction);
        }

        output.WriteLine(Invariant($"{merged.Changes.Count(change => change.Before is null)} added, {merged.Changes.Count(change => change.Before is not null)} filled, {merged.Alike} there already; {Counted(merged.Forms.Length, "row", "rows")} in {file}."));
    }

    private ListFile Own() => new(file ?? throw new InscriptionLabException("The demonstration list cannot be changed; name your own with --reference FILE (it is made where it is not there)."), clock);

    private void Facts(string name, IEnumerable<string> facts)
    {
        foreach (var fact in facts)
        {
            output.WriteLine($"  {name}: {fact}");
        }
    }

    private static string Line(ReferenceForm form) =>
        $"{form.Form} ({form.Maker}, {Words.For(form.Status)}{(form.From is null && form.To is null ? string.Empty : ", " + Years([form]))}{(form.Address is { } address ? ", " + address : string.Empty)})";

    private static string LettersOf(ReferenceForm form) => string.Join(", ", new[]
    {
        form.LetterHeight is { } height ? Invariant($"{height.Millimetres:0.##} mm high") : null,
        form.LetterSpacing is { } spacing ? Invariant($"{spacing:0.##} of a capital's height from letter to letter") : null,
    }.OfType<string>());

    private static string Years(ReferenceForm[] rows) => rows.Select(row => new Evidence.DateInterval(row.From, row.To)).Aggregate((first, second) => first.Hull(second)).ToString();
}
