using System.Collections.Generic;
using System.Text;

namespace InscriptionLab.Comparison;

/// <summary>The form in which spellings are searched: folded letters, words apart by one space, no punctuation. Never shown and never compared letter by letter.</summary>
internal static class SearchKey
{
    private const char Gap = ' ';

    internal static string Of(IEnumerable<string> folds)
    {
        var key = new StringBuilder();
        foreach (var fold in folds)
        {
            if (fold != LetterFold.Space && !LetterFold.IsPunctuation(fold))
            {
                key.Append(fold);
            }
            else if (fold == LetterFold.Space && key.Length > 0 && key[^1] != Gap)
            {
                key.Append(Gap);
            }
        }

        return key.ToString().TrimEnd(Gap);
    }

    /// <summary>Gives the pairs of neighbouring characters, the edges of the key taken as spaces.</summary>
    internal static HashSet<uint> Pairs(string key)
    {
        var pairs = new HashSet<uint>(key.Length + 1);
        var previous = Gap;
        foreach (var character in key)
        {
            pairs.Add(Pair(previous, character));
            previous = character;
        }

        pairs.Add(Pair(previous, Gap));
        return pairs;
    }

    internal static uint Pair(char first, char second) => ((uint)first << 16) | second;
}
