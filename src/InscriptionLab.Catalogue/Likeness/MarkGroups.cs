using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Likeness;

/// <summary>
/// Groups marks that look alike: groups are joined while the likeness between all their marks, on average, reaches a threshold (average
/// linkage, Sokal and Michener 1958). One mark between two groups does not run them together, as it would if single likenesses decided.
/// </summary>
public static class MarkGroups
{
    /// <summary>
    /// Mean likeness down to which two groups are joined. Chosen on rendered marks of hands that are not those of the tests (see MarkGroupsTests):
    /// few false joins count more than few missed ones, because a false join runs two groups together.
    /// </summary>
    public const float DefaultThreshold = 0.945f;

    /// <summary>Groups.</summary>
    /// <param name="embeddings">One embedding a mark, all of one size.</param>
    /// <param name="threshold">Mean likeness down to which two groups are joined, -1 to 1.</param>
    /// <returns>For each mark the index of the first mark of its group.</returns>
    public static ImmutableArray<int> Of(IReadOnlyList<ReadOnlyMemory<sbyte>> embeddings, float threshold = DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(embeddings);
        var first = new int[embeddings.Count];

        // A mean that reaches the threshold needs at least one pair that does: groups never reach across these parts.
        foreach (var part in Connected(embeddings, threshold).GroupBy(pair => pair.First, pair => pair.Mark))
        {
            foreach (var group in new MeanLinkage([.. part.Select(mark => (mark, embeddings[mark]))], threshold).Groups())
            {
                var least = group.Min();
                group.ForEach(mark => first[mark] = least);
            }
        }

        return [.. first];
    }

    /// <summary>Parts the graph whose edges are pairs that reach the threshold; gives each mark with the first mark of its part.</summary>
    private static IEnumerable<(int Mark, int First)> Connected(IReadOnlyList<ReadOnlyMemory<sbyte>> embeddings, float threshold)
    {
        var tied = new TiedTogether(embeddings.Count);
        var lengths = new double[embeddings.Count];
        for (var index = 0; index < lengths.Length; index++)
        {
            var own = embeddings[index].Span;
            lengths[index] = Math.Sqrt(Math.Max(1, MarkIndex.Dot(own, own)));
            for (var other = 0; other < index; other++)
            {
                if (MarkIndex.Dot(own, embeddings[other].Span) >= threshold * lengths[index] * lengths[other])
                {
                    tied.Tie(index, other);
                }
            }
        }

        return Enumerable.Range(0, lengths.Length).Select(index => (index, tied.First(index)));
    }
}
