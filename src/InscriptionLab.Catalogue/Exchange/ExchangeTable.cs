using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Exchange;

/// <summary>A table of the catalogue in plain columns; the same for CSV and Parquet.</summary>
/// <param name="Name">Name of the table.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, one by one.</param>
internal sealed record ExchangeTable(string Name, ImmutableArray<ExchangeColumn> Columns, IEnumerable<ImmutableArray<string>> Rows)
{
    /// <summary>Gives all tables of the objects.</summary>
    internal static ImmutableArray<ExchangeTable> Of(IEnumerable<ExchangeObject> objects)
    {
        var lines = objects.SelectMany(shown => shown.Photos.Where(photo => photo.Reading is not null).SelectMany(photo => photo.Reading!.Lines.Select(line => (shown, photo, reading: photo.Reading!, line))));
        return
        [
            new ExchangeTable("lines", Lines, lines.Select(item => Line(item.shown, item.photo, item.reading, item.line))),
            new ExchangeTable("letters", Letters, lines.SelectMany(item => item.line.Letters.Select((letter, index) => Letter(item.photo, item.line, letter, index)))),
            new ExchangeTable("measurements", Measurements, objects.SelectMany(shown => shown.Photos.SelectMany(photo => photo.Measurements.Select(measured => Measured(shown, photo, measured))))),
            new ExchangeTable("observations", Observations, objects.SelectMany(shown => shown.Observations.Select(seen => Observed(shown, seen)))),
        ];
    }

    private static ImmutableArray<ExchangeColumn> Lines { get; } =
    [
        new("object", "string", "Name of the object", true),
        new("photo_sha256", "string", "SHA-256 of the photo's bytes", true),
        new("file", "string", "Name of the photo's file", true),
        new("line", "integer", "Line of lettering, from 1", true),
        new("read", "string", "The line as the program read it; ? for a letter that is cut but cannot be seen", false),
        new("corrected", "string", "The line as a person reads it; empty where no correction stands", false),
        new("corrected_by", "string", "Who corrected", false),
        new("finding", "string", "agrees, differs, undecided or nothing-read, of the whole photo", false),
        new("nearest_form", "string", "Nearest form of the list", false),
        new("made", "datetime", "When the photo was examined (UTC)", true),
        new("program", "string", "Program and version", true),
        new("model", "string", "Reader and version", true),
        new("list_sha256", "string", "SHA-256 of the reference list", false),
    ];

    private static ImmutableArray<ExchangeColumn> Letters { get; } =
    [
        new("photo_sha256", "string", "SHA-256 of the photo's bytes", true),
        new("line", "integer", "Line of lettering, from 1", true),
        new("letter", "integer", "Letter of the line, spaces left out, from 1", true),
        new("read", "string", "The letter; ? where it is cut but cannot be seen", true),
        new("probability", "number", "Calibrated probability of the letter, 0 to 1", true),
        new("alternatives", "string", "What else it may be, as letter=probability; an empty letter means no letter", false),
    ];

    private static ImmutableArray<ExchangeColumn> Measurements { get; } =
    [
        new("object", "string", "Name of the object", true),
        new("photo_sha256", "string", "SHA-256 of the photo's bytes", true),
        new("role", "string", "outer, clear or stop", true),
        new("diameter_mm", "number", "Diameter, best estimate, in millimetres", true),
        new("expanded_uncertainty_mm", "number", "Expanded uncertainty U = k u_c in millimetres", true),
        new("coverage_factor", "number", "Coverage factor k", true),
        new("scale", "string", "What gave the scale", true),
        new("statement", "string", "The result in words, after the GUM", true),
    ];

    private static ImmutableArray<ExchangeColumn> Observations { get; } =
    [
        new("object", "string", "Name of the object", true),
        new("feature", "string", "Question of the checklist of construction, or name of a measured value", true),
        new("answer", "string", "What a person saw or measured on the object itself", true),
        new("from_year", "integer", "First year that the answer tells of; empty where it leaves that open", false),
        new("to_year", "integer", "Last year that the answer tells of; empty where it leaves that open", false),
        new("source", "string", "What the years rest on", false),
        new("seen_by", "string", "Who saw it", true),
        new("seen", "datetime", "When it was recorded (UTC)", true),
    ];

    private static ImmutableArray<string> Line(ExchangeObject shown, ExchangePhoto photo, ExchangeExamination reading, ExchangeLine line) =>
    [
        shown.Key,
        photo.Sha256,
        photo.FileName,
        Whole(line.Position + 1),
        line.Read,
        line.Correction?.Text ?? string.Empty,
        line.Correction?.By ?? string.Empty,
        reading.Content.Outcome,
        reading.Content.Nearest is [var nearest, ..] ? nearest.Form : string.Empty,
        ExchangeText.Moment(reading.MadeAt),
        reading.Versions.Program,
        reading.Versions.Model,
        reading.Versions.ListSha256,
    ];

    private static ImmutableArray<string> Letter(ExchangePhoto photo, ExchangeLine line, Cataloguing.RecordLetter letter, int index) =>
    [
        photo.Sha256,
        Whole(line.Position + 1),
        Whole(index + 1),
        letter.Character,
        ExchangeText.Number(letter.Probability),
        string.Join(' ', letter.Alternatives.Select(other => $"{other.Character}={ExchangeText.Number(other.Probability)}")),
    ];

    private static ImmutableArray<string> Measured(ExchangeObject shown, ExchangePhoto photo, Cataloguing.MeasurementEntry measured) =>
    [
        shown.Key,
        photo.Sha256,
        measured.Role,
        ExchangeText.Number(measured.ValueMm),
        ExchangeText.Number(measured.ExpandedMm),
        ExchangeText.Number(measured.CoverageFactor),
        measured.Scale,
        measured.Statement,
    ];

    private static ImmutableArray<string> Observed(ExchangeObject shown, Cataloguing.ObservationEntry seen) =>
    [
        shown.Key,
        seen.Feature,
        seen.Answer,
        seen.FromYear is { } from ? Whole(from) : string.Empty,
        seen.ToYear is { } to ? Whole(to) : string.Empty,
        seen.Source,
        seen.By,
        ExchangeText.Moment(seen.MadeAt),
    ];

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
