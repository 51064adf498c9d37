using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Comparison;

/// <summary>Tells how words are written.</summary>
internal static class WordCases
{
    internal static WordCase Of(IEnumerable<string> letters)
    {
        var cased = letters.Where(letter => LetterFold.IsUpper(letter) || LetterFold.IsLower(letter)).Select(LetterFold.IsUpper).ToArray();
        return cased switch
        {
            [] => WordCase.None,
            [true] => WordCase.CapitalFirst,
            _ when cased.All(isUpper => isUpper) => WordCase.Capitals,
            _ when !cased.Any(isUpper => isUpper) => WordCase.Small,
            [true, ..] when !cased.Skip(1).Any(isUpper => isUpper) => WordCase.CapitalFirst,
            _ => WordCase.Mixed,
        };
    }

    /// <summary>Tells whether two ways of writing a word differ letter by letter: one of them is mixed and the other is not plain capitals.</summary>
    internal static bool DifferInside(WordCase read, WordCase form) =>
        (read is WordCase.Mixed && form is not WordCase.None) || (form is WordCase.Mixed && read is not (WordCase.Capitals or WordCase.None));
}
