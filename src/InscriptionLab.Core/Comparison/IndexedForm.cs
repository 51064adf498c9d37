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
    /// <param name="alphabet">The letters met so far, so that the forms of a long list share them.</param>
    internal IndexedForm(ReferenceForm form, int order, FoldAlphabet alphabet)
    {
        Form = form;
        Order = order;
        var letters = Graphemes.Of(form.Form);
        Letters = [.. letters.Select(letter => alphabet.Shared(letter).Letter)];
        Folds = [.. letters.Select(letter => alphabet.Shared(letter).Fold)];
        Numbers = [.. Folds.Select(alphabet.NumberOf)];
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

    /// <summary>Gets the numbers of the folded letters in the alphabet of the list.</summary>
    internal ImmutableArray<ushort> Numbers { get; }

    internal ImmutableArray<bool> IsPunctuation { get; }

    internal int LetterCount { get; }

    /// <summary>Gets the words without case, shape, accents of case and punctuation, one space between them.</summary>
    internal string Key { get; }

    internal int Words { get; }
}
