using System;
using System.Collections.Generic;
using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>What an independent second reader made of a line. It is kept beside the first reading and changes nothing in it.</summary>
/// <param name="Reader">Name and version of the second reader.</param>
/// <param name="Text">The line as the second reader reads it; empty where it reads nothing.</param>
/// <param name="Agrees">For each letter of the first reading, whether the second reader has the same letter at that place.</param>
public sealed record SecondReading(string Reader, string Text, ImmutableArray<bool> Agrees)
{
    /// <summary>Sets a second reading beside the first; the letters are lined up with the fewest changes (Levenshtein, 1966).</summary>
    /// <param name="reader">Name and version of the second reader.</param>
    /// <param name="first">Letters of the first reading.</param>
    /// <param name="text">The line as the second reader reads it.</param>
    public static SecondReading Beside(ImmutableArray<Letter> first, string reader, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var other = Graphemes.Of(text);
        var changes = Changes(first, other);
        var agrees = ImmutableArray.CreateBuilder<bool>(first.Length);
        for (int i = 0, j = 0; i < first.Length;)
        {
            if (j < other.Count && changes[i][j] == changes[i + 1][j + 1] + (Same(first[i], other[j]) ? 0 : 1))
            {
                agrees.Add(Same(first[i], other[j]));
                (i, j) = (i + 1, j + 1);
            }
            else if (j < other.Count && changes[i][j] == 1 + changes[i][j + 1])
            {
                j++;
            }
            else
            {
                agrees.Add(false);
                i++;
            }
        }

        return new SecondReading(reader, text, agrees.MoveToImmutable());
    }

    /// <summary>Gives the fewest changes that lead from the letters behind each place of the one to those behind each place of the other.</summary>
    private static int[][] Changes(ImmutableArray<Letter> first, IReadOnlyList<string> other)
    {
        var changes = new int[first.Length + 1][];
        for (var i = first.Length; i >= 0; i--)
        {
            changes[i] = new int[other.Count + 1];
            for (var j = other.Count; j >= 0; j--)
            {
                changes[i][j] = i == first.Length ? other.Count - j
                    : j == other.Count ? first.Length - i
                    : Math.Min(changes[i + 1][j + 1] + (Same(first[i], other[j]) ? 0 : 1), 1 + Math.Min(changes[i + 1][j], changes[i][j + 1]));
            }
        }

        return changes;
    }

    private static bool Same(Letter letter, string other) => letter.Character == other;
}
