using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>One photo of a lens cell as one JSON object. Points are pixels of the photo as shown upright; a pixel's centre has integer coordinates.</summary>
/// <param name="File">Name as given on the command line.</param>
/// <param name="Scale">The scale that was used; null where none was found.</param>
/// <param name="Circles">The circles that were measured.</param>
/// <param name="Warnings">Sentences for the user.</param>
internal sealed record MeasureRecord(
    string File,
    ScaleRecord? Scale,
    ImmutableArray<CircleRecord> Circles,
    ImmutableArray<string> Warnings)
{
    /// <summary>Gets circles that were seen and given no role.</summary>
    public ImmutableArray<OtherCircleRecord> Others { get; init; } = [];
}
