using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace InscriptionLab.References;

/// <summary>
/// Unicode normalisation form C for Latin letters with combining marks (Unicode Standard Annex 15); other characters stay as they are.
/// The platform's own normalisation does nothing where globalisation is invariant, as it is in this program.
/// </summary>
public static class CanonicalComposition
{
    private const char FirstMark = '\u0300';
    private const char LastMark = '\u036F';

    /// <summary>Marks that are another mark by definition (singleton decompositions).</summary>
    private static readonly Dictionary<char, char> SameMark = new() { ['\u0340'] = '\u0300', ['\u0341'] = '\u0301', ['\u0343'] = '\u0313' };

    private static readonly Dictionary<char, string> Parts = [];
    private static readonly Dictionary<(char Letter, char Mark), char> Wholes = [];
    private static readonly int[] Classes = new int[LastMark - FirstMark + 1];

    static CanonicalComposition()
    {
        foreach (var (mark, pairs) in LatinCompositions.Rows)
        {
            for (var index = 0; index < pairs.Length; index += 2)
            {
                Parts[pairs[index + 1]] = string.Create(CultureInfo.InvariantCulture, $"{pairs[index]}{mark}");
                Wholes[(pairs[index], mark)] = pairs[index + 1];
            }
        }

        // The Ångström and Kelvin signs are letters, and the mark U+0344 is two marks, by definition.
        Parts['\u212B'] = "A\u030A";
        Parts['\u212A'] = "K";
        Parts['\u0344'] = "\u0308\u0301";

        var at = 0;
        foreach (var (last, combiningClass) in LatinCompositions.ClassRuns)
        {
            for (; at <= last - FirstMark; at++)
            {
                Classes[at] = combiningClass;
            }
        }
    }

    /// <summary>Gives a text with letters and their marks joined where Unicode has a single character for the two.</summary>
    /// <param name="text">Any text.</param>
    public static string Compose(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var letters = Decompose(text);
        var composed = new StringBuilder(letters.Length);
        var starter = -1;
        var lastClass = 0;
        foreach (var character in letters)
        {
            var combiningClass = ClassOf(character);
            var isBlocked = starter < 0 || (lastClass >= combiningClass && composed.Length > starter + 1);
            if (!isBlocked && combiningClass > 0 && Wholes.TryGetValue((composed[starter], character), out var whole))
            {
                composed[starter] = whole;
                continue;
            }

            if (combiningClass == 0)
            {
                starter = composed.Length;
            }

            lastClass = combiningClass;
            composed.Append(character);
        }

        return composed.ToString();
    }

    /// <summary>Gives a text with letters and marks apart, marks in canonical order (normalisation form D for the same characters).</summary>
    internal static string Decompose(string text)
    {
        var apart = new StringBuilder(text.Length);
        foreach (var character in text)
        {
            Split(character, apart);
        }

        // Canonical ordering: a stable sort of each run of marks by class.
        for (var index = 1; index < apart.Length; index++)
        {
            var combiningClass = ClassOf(apart[index]);
            for (var at = index; combiningClass > 0 && at > 0 && ClassOf(apart[at - 1]) > combiningClass; at--)
            {
                (apart[at - 1], apart[at]) = (apart[at], apart[at - 1]);
            }
        }

        return apart.ToString();
    }

    private static void Split(char character, StringBuilder into)
    {
        if (Parts.TryGetValue(character, out var parts))
        {
            Split(parts[0], into);
            into.Append(parts, 1, parts.Length - 1);
        }
        else
        {
            into.Append(SameMark.GetValueOrDefault(character, character));
        }
    }

    private static int ClassOf(char character) => character is >= FirstMark and <= LastMark ? Classes[character - FirstMark] : 0;
}
