using System.Collections.Generic;
using InscriptionLab.Likeness;

namespace InscriptionLab.Exchange;

/// <summary>What data set is to be built.</summary>
/// <param name="Out">A new folder.</param>
/// <param name="Licence">Licence of the photos and of what is taken from them, as the user knows it; null where not known.</param>
/// <param name="Seed">Changes which object falls into which part.</param>
public sealed record DatasetRequest(string Out, string? Licence, int Seed)
{
    /// <summary>Gets the numbers of the examinations whose lines are wanted; null for the latest one of every photo.</summary>
    /// <value>Of several examinations of one photo only the latest counts, so that no line is in the set twice.</value>
    public IReadOnlySet<long>? Examinations { get; init; }

    /// <summary>Gets the mean likeness down to which two groups are joined, -1 to 1.</summary>
    public float Threshold { get; init; } = MarkGroups.DefaultThreshold;
}
