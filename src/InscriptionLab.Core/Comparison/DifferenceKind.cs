namespace InscriptionLab.Comparison;

/// <summary>In what way a reading and a form differ at a place. The first four are differences of spelling, the others are not.</summary>
public enum DifferenceKind
{
    /// <summary>Another letter.</summary>
    Replaced,

    /// <summary>The form has a letter that the reading lacks.</summary>
    Missing,

    /// <summary>The reading has a letter that the form lacks.</summary>
    Added,

    /// <summary>Two neighbours stand in the other order; each of them is one difference.</summary>
    Swapped,

    /// <summary>The same letter in another case inside a word. A whole word in capitals is no difference.</summary>
    Case,

    /// <summary>The same letter in another shape: long s, a raised letter.</summary>
    LetterForm,

    /// <summary>A stop, comma, apostrophe or hyphen more, less or other.</summary>
    Punctuation,

    /// <summary>A space more or less.</summary>
    Spacing,
}
