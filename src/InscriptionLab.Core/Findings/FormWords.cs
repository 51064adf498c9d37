using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.Findings;

/// <summary>Parts the differences of a form into words of it that are not on the piece at all, and letters that differ.</summary>
internal sealed class FormWords
{
    internal FormWords(NearestForm nearest)
    {
        var letters = Graphemes.Of(nearest.Form.Form);
        var missing = nearest.Differences.Where(difference => difference.Read.Length == 0).Select(difference => difference.FormIndex).ToHashSet();
        var absent = new HashSet<int>();
        var words = ImmutableArray.CreateBuilder<string>();
        for (var first = 0; first < letters.Count; first++)
        {
            var word = Enumerable.Range(first, letters.Count - first).TakeWhile(index => letters[index] != " ").ToArray();
            if (word.Length > 0 && word.All(missing.Contains))
            {
                words.Add(string.Concat(word.Select(index => letters[index])));
                absent.UnionWith(word);
            }

            first += word.Length;
        }

        AbsentWords = words.ToImmutable();
        LetterDifferences = [.. nearest.SpellingDifferences.Where(difference => difference.Read.Length > 0 || !absent.Contains(difference.FormIndex))];
    }

    /// <summary>Gets the words of the form of which no letter was read.</summary>
    internal ImmutableArray<string> AbsentWords { get; }

    /// <summary>Gets the differences of spelling in the words that were read.</summary>
    internal ImmutableArray<LetterDifference> LetterDifferences { get; }
}
