using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>What limits a photo and how to take a better one.</summary>
/// <param name="Worst">Kind of what limits the reading most; null where nothing does.</param>
/// <param name="Limits">What limits it, the worst first; a missing scale comes last.</param>
internal sealed record AdviceRecord(string? Worst, ImmutableArray<LimitRecord> Limits)
{
    /// <summary>Gets from which side the light comes; left out where that was not told.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LightRecord? Light { get; init; }

    /// <summary>Gets how sharp the tube's outlines are; left out where that could not be measured.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OutlinesRecord? Outlines { get; init; }
}
