using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>What limits a photo and how to take a better one.</summary>
/// <param name="Worst">Kind of what limits the reading most; null where nothing does.</param>
/// <param name="Limits">What limits it, the worst first; a missing scale comes last.</param>
internal sealed record AdviceRecord(string? Worst, ImmutableArray<LimitRecord> Limits);
