using System;
using System.Collections.Generic;
using System.Collections.Immutable;

namespace InscriptionLab.Likeness;

/// <summary>Groups marks that look alike: a graph with an edge between two marks whose likeness reaches a threshold; each connected part is a group.</summary>
public static class MarkGroups
{
    /// <summary>
    /// Likeness from which two marks are joined. Chosen on rendered marks of hands that are not those of the tests (see MarkGroupsTests):
    /// few false joins count more than few missed ones, because a false join runs two groups together.
    /// </summary>
    public const float DefaultThreshold = 0.95f;

    /// <summary>Groups.</summary>
    /// <param name="embeddings">One embedding a mark, all of one size.</param>
    /// <param name="threshold">Likeness from which two marks are joined, -1 to 1.</param>
    /// <returns>For each mark the index of the first mark of its group.</returns>
    public static ImmutableArray<int> Of(IReadOnlyList<ReadOnlyMemory<sbyte>> embeddings, float threshold = DefaultThreshold)
    {
        ArgumentNullException.ThrowIfNull(embeddings);
        var first = new int[embeddings.Count];
        var lengths = new double[embeddings.Count];
        for (var index = 0; index < first.Length; index++)
        {
            first[index] = index;
            var own = embeddings[index].Span;
            lengths[index] = Math.Sqrt(Math.Max(1, MarkIndex.Dot(own, own)));
            for (var other = 0; other < index; other++)
            {
                if (MarkIndex.Dot(own, embeddings[other].Span) >= threshold * lengths[index] * lengths[other])
                {
                    Join(first, index, other);
                }
            }
        }

        for (var index = 0; index < first.Length; index++)
        {
            first[index] = Root(first, index);
        }

        return [.. first];
    }

    private static void Join(int[] first, int left, int right)
    {
        var (one, two) = (Root(first, left), Root(first, right));
        first[Math.Max(one, two)] = Math.Min(one, two);
    }

    private static int Root(int[] first, int index)
    {
        while (first[index] != index)
        {
            first[index] = first[first[index]];
            index = first[index];
        }

        return index;
    }
}
