using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace InscriptionLab.Likeness;

/// <summary>
/// Average linkage by chains of nearest neighbours (Murtagh, The Computer Journal 26, 1983). The mean likeness of two groups is the product of the
/// sums of their marks' unit vectors over the product of their sizes, so that no table of all pairs is kept: memory grows with the marks, time with
/// their square.
/// </summary>
internal sealed class MeanLinkage
{
    private readonly float _threshold;
    private readonly List<Group> _open;

    internal MeanLinkage(IEnumerable<(int Mark, ReadOnlyMemory<sbyte> Embedding)> marks, float threshold)
    {
        _threshold = threshold;
        _open = [.. marks.Select(mark => new Group([mark.Mark], Unit(mark.Embedding.Span)))];
    }

    /// <summary>Joins, and gives the marks of each group.</summary>
    internal IEnumerable<List<int>> Groups()
    {
        var chain = new Stack<Group>();
        while (_open.Count > 0)
        {
            if (chain.Count == 0)
            {
                chain.Push(_open[0]);
            }

            var tip = chain.Pop();
            chain.TryPeek(out var before);
            var (nearest, likeness) = Nearest(tip, before);
            if (nearest is null || likeness < _threshold)
            {
                // Joining others never brings a group nearer than it was to the nearer of them, so this one is done.
                _open.Remove(tip);
                yield return tip.Marks;
            }
            else if (nearest == before)
            {
                chain.Pop();
                _open.Remove(tip);
                _open.Remove(nearest);
                _open.Add(nearest.With(tip));
            }
            else
            {
                chain.Push(tip);
                chain.Push(nearest);
            }
        }
    }

    /// <summary>Gives the group most like one; where several are equally so, the one before it in the chain, or the chain would run in a circle.</summary>
    private (Group? Group, float Likeness) Nearest(Group tip, Group? before)
    {
        var (nearest, most) = (before, before is null ? float.NegativeInfinity : tip.Likeness(before));
        foreach (var other in _open)
        {
            if (other != tip && other != before && tip.Likeness(other) is var likeness && likeness > most)
            {
                (nearest, most) = (other, likeness);
            }
        }

        return (nearest, most);
    }

    private static float[] Unit(ReadOnlySpan<sbyte> embedding)
    {
        var length = MathF.Sqrt(Math.Max(1, MarkIndex.Dot(embedding, embedding)));
        var unit = new float[embedding.Length];
        for (var index = 0; index < unit.Length; index++)
        {
            unit[index] = embedding[index] / length;
        }

        return unit;
    }

    /// <summary>Marks, with the sum of their unit vectors.</summary>
    private sealed class Group(List<int> marks, float[] sum)
    {
        internal List<int> Marks { get; } = marks;

        private float[] Sum { get; } = sum;

        internal float Likeness(Group other)
        {
            var total = Vector<float>.Zero;
            var index = 0;
            for (; index <= Sum.Length - Vector<float>.Count; index += Vector<float>.Count)
            {
                total += new Vector<float>(Sum, index) * new Vector<float>(other.Sum, index);
            }

            var dot = Vector.Sum(total);
            for (; index < Sum.Length; index++)
            {
                dot += Sum[index] * other.Sum[index];
            }

            return dot / ((float)Marks.Count * other.Marks.Count);
        }

        internal Group With(Group other) => new([.. Marks, .. other.Marks], [.. Sum.Zip(other.Sum, (one, two) => one + two)]);
    }
}
