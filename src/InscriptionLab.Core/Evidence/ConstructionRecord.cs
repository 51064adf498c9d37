using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>What a person saw and measured on a piece.</summary>
/// <param name="Name">File it came from.</param>
/// <param name="Table">The checklist that it answers.</param>
/// <param name="Seen">The answers given.</param>
public sealed record ConstructionRecord(string Name, ConstructionTable Table, ImmutableArray<ConstructionFeature> Seen)
{
    /// <summary>Gets how the signature runs; null where not recorded.</summary>
    public SignatureDirection? Direction { get; init; }

    /// <summary>Gets where the signature stands; null where not recorded.</summary>
    public string? Position { get; init; }

    /// <summary>Gets the height of the tallest letter of the name as a person measured it; null where not recorded.</summary>
    public Length? LetterHeight { get; init; }

    /// <summary>Gets the measured values.</summary>
    public ImmutableArray<MeasuredValue> Measures { get; init; } = [];

    /// <summary>Gets every answer in the words of a record: question and answer.</summary>
    public ImmutableArray<(string Feature, string Observation)> Answers =>
    [
        .. Seen.Select(row => (row.Feature, row.Observation)),
        .. ReferenceField.Directions.Where(known => known.Value == Direction).Select(known => (ConstructionReader.Direction, known.Word)),
        .. Position is { } position ? [(ConstructionReader.Position, position)] : ImmutableArray<(string, string)>.Empty,
        .. LetterHeight is { } height ? [(ReferenceField.LetterHeight, height.Millimetres.ToString(CultureInfo.InvariantCulture))] : ImmutableArray<(string, string)>.Empty,
        .. Measures.Select(measure => (measure.Name, measure.Value.ToString(CultureInfo.InvariantCulture))),
    ];

    /// <summary>Gets what the answers mean beyond years, and what the measured values say of each other.</summary>
    public ImmutableArray<string> Remarks =>
    [
        .. Seen.Where(row => row.Remark.Length > 0).Select(row => $"{Plain(row.Feature)} {Plain(row.Observation)}: {row.Remark} ({row.Source})."),
        .. MeasuredValue.Remarks(Measures),
    ];

    internal static string Plain(string word) => word.Replace('_', ' ').Replace('-', ' ');
}
