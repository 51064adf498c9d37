using System;
using System.Collections.Generic;
using InscriptionLab.Likeness;

namespace InscriptionLab.Surveys;

/// <summary>Groups photos that are nearly the same: saved again, made smaller, brightened.</summary>
internal static class NearDuplicates
{
    /// <summary>Groups of bits that are looked up: two hashes that differ in fewer bits than there are groups agree in at least one.</summary>
    private const int Bands = 8;

    private const int BandBits = 8;

    /// <summary>Gives, for each hash, the index of the first one of its group: its own where it stands alone.</summary>
    /// <param name="hashes">Perceptual hashes.</param>
    /// <param name="bits">How many bits may differ, fewer than 8.</param>
    internal static int[] Group(IReadOnlyList<ulong> hashes, int bits)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bits, Bands);
        var first = new int[hashes.Count];
        var shelves = new Dictionary<int, List<int>>();
        for (var index = 0; index < hashes.Count; index++)
        {
            first[index] = index;
            for (var band = 0; band < Bands; band++)
            {
                var key = (band << BandBits) | (int)((hashes[index] >> (band * BandBits)) & 0xFF);
                if (!shelves.TryGetValue(key, out var shelf))
                {
                    shelves[key] = shelf = [];
                }

                foreach (var other in shelf)
                {
                    if (PerceptualHash.Distance(hashes[index], hashes[other]) <= bits)
                    {
                        Join(first, index, other);
                    }
                }

                shelf.Add(index);
            }
        }

        for (var index = 0; index < first.Length; index++)
        {
            first[index] = Root(first, index);
        }

        return first;
    }

    private static void Join(int[] first, int left, int right)
    {
        var (low, high) = (Root(first, left), Root(first, right));
        (low, high) = (Math.Min(low, high), Math.Max(low, high));
        first[high] = low;
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
