using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Numerics;

namespace InscriptionLab.Likeness;

/// <summary>All embeddings of a catalogue in memory, searched one by one: exact, and fast enough for hundreds of thousands.</summary>
public sealed class MarkIndex
{
    private readonly int _dimensions;
    private readonly long[] _ids;
    private readonly sbyte[] _values;
    private readonly float[] _lengths;

    /// <summary>Makes the index.</summary>
    /// <param name="marks">Number and embedding of each mark, all of one size.</param>
    /// <exception cref="ArgumentException">The embeddings differ in size.</exception>
    public MarkIndex(IReadOnlyCollection<KeyValuePair<long, ReadOnlyMemory<sbyte>>> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        _dimensions = marks.Count == 0 ? 0 : marks.First().Value.Length;
        _ids = new long[marks.Count];
        _values = new sbyte[(long)marks.Count * _dimensions];
        var index = 0;
        foreach (var (id, embedding) in marks)
        {
            if (embedding.Length != _dimensions)
            {
                throw new ArgumentException("The embeddings must be of one size.", nameof(marks));
            }

            _ids[index] = id;
            embedding.Span.CopyTo(_values.AsSpan(index * _dimensions));
            index++;
        }

        _lengths = Lengths(_values, _ids.Length, _dimensions);
    }

    /// <summary>Makes the index from numbers that lie one after the other already.</summary>
    /// <param name="ids">Number of each mark.</param>
    /// <param name="values">The embeddings, one after the other; the index keeps them.</param>
    internal MarkIndex(long[] ids, sbyte[] values)
    {
        _dimensions = ids.Length == 0 ? 0 : values.Length / ids.Length;
        (_ids, _values) = (ids, values);
        _lengths = Lengths(values, ids.Length, _dimensions);
    }

    /// <summary>Gets the number of marks.</summary>
    public int Count => _ids.Length;

    /// <summary>Finds the marks most like one.</summary>
    /// <param name="embedding">Embedding of the mark asked for.</param>
    /// <param name="most">How many to give at most.</param>
    /// <returns>The nearest marks, nearest first, with the cosine of the angle between the embeddings (1 = alike).</returns>
    public ImmutableArray<LikeMark> Nearest(ReadOnlySpan<sbyte> embedding, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        if (Count == 0)
        {
            return [];
        }

        ArgumentOutOfRangeException.ThrowIfNotEqual(embedding.Length, _dimensions);
        var length = MathF.Sqrt(Math.Max(1, Dot(embedding, embedding)));
        var best = new PriorityQueue<int, float>(most + 1);
        for (var index = 0; index < _ids.Length; index++)
        {
            var likeness = Dot(embedding, _values.AsSpan(index * _dimensions, _dimensions)) / (length * _lengths[index]);
            if (best.Count < most)
            {
                best.Enqueue(index, likeness);
            }
            else if (best.TryPeek(out _, out var least) && likeness > least)
            {
                best.DequeueEnqueue(index, likeness);
            }
        }

        return [.. best.UnorderedItems.OrderByDescending(item => item.Priority).ThenBy(item => _ids[item.Element]).Select(item => new LikeMark(_ids[item.Element], item.Priority))];
    }

    private static float[] Lengths(sbyte[] values, int count, int dimensions)
    {
        var lengths = new float[count];
        for (var index = 0; index < count; index++)
        {
            var embedding = values.AsSpan(index * dimensions, dimensions);
            lengths[index] = MathF.Sqrt(Math.Max(1, Dot(embedding, embedding)));
        }

        return lengths;
    }

    /// <summary>Gives the scalar product, exact in whole numbers.</summary>
    internal static int Dot(ReadOnlySpan<sbyte> left, ReadOnlySpan<sbyte> right)
    {
        var sum = Vector<int>.Zero;
        var index = 0;
        for (; index <= left.Length - Vector<sbyte>.Count; index += Vector<sbyte>.Count)
        {
            Vector.Widen(new Vector<sbyte>(left[index..]), out var lowLeft, out var highLeft);
            Vector.Widen(new Vector<sbyte>(right[index..]), out var lowRight, out var highRight);

            // Products of two signed bytes fit 16 bits; their sums are kept in 32.
            Vector.Widen(lowLeft * lowRight, out var first, out var second);
            Vector.Widen(highLeft * highRight, out var third, out var fourth);
            sum += first + second + third + fourth;
        }

        var total = Vector.Sum(sum);
        for (; index < left.Length; index++)
        {
            total += left[index] * right[index];
        }

        return total;
    }
}
