using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>A form cut into letters once, for all comparisons.</summary>
internal sealed class IndexedForm
{
    internal IndexedForm(ReferenceForm form, int order)
    {
        Form = form;
        Order = order;
        Letters = [.. Graphemes.Of(form.Form)];
        Folds = [.. Letters.Select(LetterFold.Of)];
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
