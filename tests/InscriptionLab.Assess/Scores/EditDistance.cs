using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace InscriptionLab.Assess.Scores;

/// <summary>Distances between what was cut and what was read, in letters (Levenshtein 1966; longest common subsequence).</summary>
internal static class EditDistance
{
    /// <summary>Marks that a reader may write for a letter that it cannot see.</summary>
    private const string GapMarks = "?_·□…\uFFFD*";

    /// <summary>Gives the smallest number of letters to replace, leave out or put in.</summary>
    internal static int Between(string cut, string read) => Between(Letters(cut), Letters(read), _ => false);

    /// <summary>Gives the distance where letters that nobody can see may be left out or marked as gaps at no cost.</summary>
    internal static int Between(string cut, IReadOnlyList<bool> hidden, string read) => Between(Letters(cut), Letters(read), i => hidden[i]);

    /// <summary>Gives the length of the longest sequence of words that both have in this order.</summary>
    internal static int CommonWords(IReadOnlyList<string> cut, IReadOnlyList<string> read)
    {
        var previous = new int[read.Count + 1];
        foreach (var word in cut)
        {
            var current = new int[read.Count + 1];
            for (var j = 1; j <= read.Count; j++)
            {
                current[j] = string.Equals(word, read[j - 1], StringComparison.Ordinal) ? previous[j - 1] + 1 : Math.Max(previous[j], current[j - 1]);
            }

            previous = current;
        }

        return previous[^1];
    }

    /// <summary>Pairs letters by a shortest way of edits: for each letter read, the index of the letter cut that it stands for, or -1. Replacing goes before leaving out.</summary>
    internal static int[] Pairs(string cut, string read)
    {
        var (c, r) = (Letters(cut), Letters(read));
        var cost = Enumerable.Range(0, c.Length + 1).Select(_ => new int[r.Length + 1]).ToArray();
        for (var i = 0; i <= c.Length; i++)
        {
            for (var j = 0; j <= r.Length; j++)
            {
                cost[i][j] = i == 0 ? j : j == 0 ? i : Math.Min(
                    cost[i - 1][j - 1] + (c[i - 1] == r[j - 1] ? 0 : 1),
                    1 + Math.Min(cost[i - 1][j], cost[i][j - 1]));
            }
        }

        var pairs = Enumerable.Repeat(-1, r.Length).ToArray();
        for (var (i, j) = (c.Length, r.Length); i > 0 && j > 0;)
        {
            if (cost[i][j] == cost[i - 1][j - 1] + (c[i - 1] == r[j - 1] ? 0 : 1))
            {
                pairs[--j] = --i;
            }
            else if (cost[i][j] == cost[i - 1][j] + 1)
            {
                i--;
            }
            else
            {
                j--;
            }
        }

        return pairs;
    }

    private static int Between(Rune[] cut, Rune[] read, Func<int, bool> hidden)
    {
        var previous = Enumerable.Range(0, read.Length + 1).ToArray();
        for (var i = 0; i < cut.Length; i++)
        {
            var missing = hidden(i) ? 0 : 1;
            var current = new int[read.Length + 1];
            current[0] = previous[0] + missing;
            for (var j = 1; j <= read.Length; j++)
            {
                var same = cut[i] == read[j - 1] || (missing == 0 && IsGap(read[j - 1]));
                current[j] = Math.Min(Math.Min(previous[j] + missing, current[j - 1] + 1), previous[j - 1] + (same ? 0 : 1));
            }

            previous = current;
        }

        return previous[^1];
    }

    private static bool IsGap(Rune letter) => letter.IsBmp && GapMarks.Contains((char)letter.Value, StringComparison.Ordinal);

    private static Rune[] Letters(string text) => [.. text.EnumerateRunes()];
}
