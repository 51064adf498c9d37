using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>One photo as one JSON object. Points are pixels of the photo as shown upright; a pixel's centre has integer coordinates.</summary>
/// <param name="File">Name as given on the command line.</param>
/// <param name="Sha256">SHA-256 of the file.</param>
/// <param name="Tube">The tube, or null where none was found.</param>
/// <param name="Lines">Lettering line by line.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Warnings">Sentences for the user.</param>
/// <param name="Advice">What limits the photo; null in records of earlier versions.</param>
internal sealed record PhotoRecord(
    string File,
    string Sha256,
    TubeRecord? Tube,
    ImmutableArray<LineRecord> Lines,
    FindingRecord Finding,
    ImmutableArray<string> Warnings,
    AdviceRecord? Advice = null)
{
    /// <summary>Gets the ring that the lettering runs round; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public RingRecord? Ring { get; init; }

    /// <summary>Gets sizes in millimetres; left out where no scale lies beside the tube.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public TubeSizesRecord? Sizes { get; init; }
}
