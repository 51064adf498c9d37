using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Gathering;

/// <summary>Pairs the letters of two readings of a line with the fewest changes (Levenshtein, 1966); letters that one reading lists as the other's alternative count as half a change.</summary>
internal static class LetterPairing
{
    private const double Listed = 0.5;

    /// <summary>Gives pairs of indices in reading order; -1 where the one or the other reading has no letter.</summary>
    internal static List<(int First, int Second)> Of(ImmutableArray<Letter> first, ImmutableArray<Letter> second)
    {
        var cost = Costs(first, second);
        var pairs = new List<(int First, int Second)>();
        for (var (i, j) = (first.Length, second.Length); i > 0 || j > 0;)
        {
            if (i > 0 && j > 0 && cost[i][j] == cost[i - 1][j - 1] + Change(first[i - 1], second[j - 1]))
            {
                pairs.Add((--i, --j));
            }
            else if (i > 0 && cost[i][j] == cost[i - 1][j] + 1)
            {
                pairs.Add((--i, -1));
            }
            else
            {
                pairs.Add((-1, --j));
            }
        }

        pairs.Reverse();
        return pairs;
    }

    /// <summary>Gives how alike two lines read: one minus the changes over the letters of the longer, at least zero.</summary>
    internal static double Likeness(ImmutableArray<Letter> first, ImmutableArray<Letter> second)
    {
        var longer = Math.Max(first.Length, second.Length);
        return longer == 0 ? 0 : Math.Max(0, 1 - (Costs(first, second)[first.Length][second.Length] / longer));
    }

    private static double[][] Costs(ImmutableArray<Letter> first, ImmutableArray<Letter> second)
    {
        var cost = Enumerable.Range(0, first.Length + 1).Select(_ => new double[second.Length + 1]).ToArray();
        for (var i = 0; i <= first.Length; i++)
        {
            for (var j = 0; j <= second.Length; j++)
            {
                cost[i][j] = i == 0 ? j : j == 0 ? i : Math.Min(
                    cost[i - 1][j - 1] + Change(first[i - 1], second[j - 1]),
                    1 + Math.Min(cost[i - 1][j], cost[i][j - 1]));
            }
        }

        return cost;
    }

    private static double Change(Letter one, Letter other) =>
        one.Character == other.Character ? 0
        : IsListed(one, other) || IsListed(other, one) || string.Equals(one.Character, other.Character, StringComparison.OrdinalIgnoreCase) ? Listed
        : 1;

    private static bool IsListed(Letter one, Letter other) => one.Alternatives.Any(candidate => candidate.Character == other.Character);
}
