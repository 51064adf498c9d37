using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>A form cut into letters once, for all comparisons.</summary>
internal sealed class IndexedForm
{
    /// <param name="form">The row.</param>
    /// <param name="order">Its place in the list.</param>
    /// <param name="folds">Each letter met so far with its fold, so that the forms of a long list share them.</param>
    internal IndexedForm(ReferenceForm form, int order, Dictionary<string, (string Letter, string Fold)> folds)
    {
        Form = form;
        Order = order;
        var letters = Graphemes.Of(form.Form);
        foreach (var letter in letters)
        {
            folds.TryAdd(letter, (letter, LetterFold.Of(letter)));
        }

        Letters = [.. letters.Select(letter => folds[letter].Letter)];
        Folds = [.. letters.Select(letter => folds[letter].Fold)];
        IsPunctuation = [.. Letters.Select(LetterFold.IsPunctuation)];
        LetterCount = Letters.Where((letter, index) => letter != LetterFold.Space && !IsPunctuation[index]).Count();
        Key = SearchKey.Of(Folds);
        Words = 1 + Key.Count(character => character == ' ');
    }

    internal ReferenceForm Form { get; }

    /// <summary>Gets the place in the list.</summary>
    internal int Order { get; }

    internal ImmutableArray<string> Letters { get; }

    internal ImmutableArray<string> Folds { get; }

    internal ImmutableArray<bool> IsPunctuation { get; }

    internal int LetterCount { get; }

    /// <summary>Gets the words without case, shape, accents of case and punctuation, one space between them.</summary>
    internal string Key { get; }

    internal int Words { get; }
}
