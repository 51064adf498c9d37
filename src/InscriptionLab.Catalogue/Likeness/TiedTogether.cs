using System;
using System.Linq;

namespace InscriptionLab.Likeness;

/// <summary>Parts things that are tied two by two: what hangs together, if only through others, is one part, named by its first.</summary>
/// <param name="count">How many things there are, each a part of its own until it is tied.</param>
internal sealed class TiedTogether(int count)
{
    private readonly int[] _before = [.. Enumerable.Range(0, count)];

    /// <summary>Ties two things.</summary>
    internal void Tie(int one, int other)
    {
        (one, other) = (First(one), First(other));
        _before[Math.Max(one, other)] = Math.Min(one, other);
    }

    /// <summary>Gives the first thing of the part to which one belongs.</summary>
    internal int First(int thing)
    {
        while (_before[thing] != thing)
        {
            _before[thing] = _before[_before[thing]];
            thing = _before[thing];
        }

        return thing;
    }
}
