using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>The checklist of construction: every question with its answers and their years. The program carries one; a user may edit a copy of it.</summary>
/// <param name="Name">File it came from.</param>
/// <param name="Rows">Answers in file order, the answers to one question together.</param>
public sealed record ConstructionTable(string Name, ImmutableArray<ConstructionFeature> Rows)
{
    private const string Embedded = "construction-features.csv";
    private const int MaximumErrors = 20;

    private static readonly FieldNames Fields = new(
        ["feature", "observation", "question", "part", "from", "to", "coverage", "basis", "source", "remark"],
        ["feature", "observation", "question", "source"]);

    private static readonly ImmutableArray<string> Bases = ["record", "law", "opinion", "common practice"];

    /// <summary>Gets the checklist that the program carries.</summary>
    public static ConstructionTable Default { get; } = Read(Embedded, System.Text.Encoding.UTF8.GetBytes(DefaultText()));

    /// <summary>Gives the text of the checklist that the program carries, for a copy that is to be edited.</summary>
    public static string DefaultText()
    {
        using var stream = typeof(ConstructionTable).Assembly.GetManifestResourceStream(typeof(ConstructionTable), Embedded)
            ?? throw new FileNotFoundException("The program was built without one of its tables.", Embedded);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Gets the names of the questions.</summary>
    public IEnumerable<string> Features => Rows.Select(row => row.Feature).Distinct();

    /// <summary>Reads a checklist.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="content">CSV, UTF-8.</param>
    /// <exception cref="InscriptionLabException">It is no checklist; the message names rows and columns.</exception>
    public static ConstructionTable Read(string file, ReadOnlySpan<byte> content)
    {
        var faults = new ReferenceFaults(file, "column");
        var rows = new CsvReferenceRows(faults, Fields).Cut(Utf8Text.Of(file, content));
        faults.ThrowIfAny(MaximumErrors);
        ImmutableArray<ConstructionFeature> parsed = [.. rows.Select(row => Parse(row, faults))];
        faults.ThrowIfAny(MaximumErrors);
        return new ConstructionTable(file, parsed);
    }

    private static ConstructionFeature Parse(ReferenceRow row, ReferenceFaults faults)
    {
        string Text(string field)
        {
            if (row.Trimmed(field) is { } text)
            {
                return text;
            }

            faults.Error(row.Place, field, "is empty; every row of a checklist says what it asks and what it rests on.");
            return string.Empty;
        }

        int? Year(string field)
        {
            if (row.Trimmed(field) is not { } written)
            {
                return null;
            }

            if (int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is >= YearWeights.FirstYear and <= YearWeights.LastYear)
            {
                return year;
            }

            faults.Error(row.Place, field, string.Create(CultureInfo.InvariantCulture, $"'{written}' is not a year from {YearWeights.FirstYear} to {YearWeights.LastYear}."));
            return null;
        }

        var (from, to) = (Year("from"), Year("to"));
        if (from > to)
        {
            faults.Error(row.Place, "to", string.Create(CultureInfo.InvariantCulture, $"{to} is before the first year, {from}."));
            to = null;
        }

        var basis = row.Trimmed("basis") ?? "common practice";
        if (!Bases.Contains(basis))
        {
            faults.Error(row.Place, "basis", $"'{basis}' is not one of {string.Join(", ", Bases)}.");
        }

        return new ConstructionFeature(Text("feature"), Text("observation"), Text("question"), row.Trimmed("part") ?? string.Empty, new DateInterval(from, to), Coverage(row, faults), basis, Text("source"), row.Trimmed("remark") ?? string.Empty);
    }

    private static double Coverage(ReferenceRow row, ReferenceFaults faults)
    {
        const double WhereNotSaid = 0.7;
        if (row.Trimmed("coverage") is not { } written)
        {
            return WhereNotSaid;
        }

        if (double.TryParse(written, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var coverage) && coverage is >= 0.5 and <= 1)
        {
            return coverage;
        }

        faults.Error(row.Place, "coverage", $"'{written}' is not a share from 0.5 to 1, such as 0.8.");
        return WhereNotSaid;
    }
}
