namespace InscriptionLab.Assess.Scores;

/// <summary>How the reading of one photo (or one set) compares with what was cut, in counts.</summary>
internal sealed record TextScore
{
    /// <summary>Gets the letters cut over all lines, joined by one space; spaces count.</summary>
    public int Letters { get; init; }

    /// <summary>Gets the edits between lettering and reading.</summary>
    public int Edits { get; init; }

    /// <summary>Gets the edits where upper and lower case count as alike.</summary>
    public int EditsIgnoringCase { get; init; }

    /// <summary>Gets the letters cut without spaces.</summary>
    public int LettersNoSpaces { get; init; }

    /// <summary>Gets the edits without spaces.</summary>
    public int EditsNoSpaces { get; init; }

    /// <summary>Gets the letters that can be seen, without spaces.</summary>
    public int LettersVisible { get; init; }

    /// <summary>Gets the edits, without spaces, where hidden letters may be left out or marked as gaps.</summary>
    public int EditsVisible { get; init; }

    /// <summary>Gets the words cut.</summary>
    public int Words { get; init; }

    /// <summary>Gets the words read right, in order.</summary>
    public int WordsRight { get; init; }

    /// <summary>Gets the lines cut.</summary>
    public int Lines { get; init; }

    /// <summary>Gets the lines read right letter by letter.</summary>
    public int LinesRight { get; init; }

    /// <summary>Gets the words of the maker's name as cut.</summary>
    public int NameWords { get; init; }

    /// <summary>Gets the words of the maker's name read right.</summary>
    public int NameWordsRight { get; init; }

    /// <summary>Gets what became of a misspelt name; null where the name is spelt as the house spelt it.</summary>
    public VariantFate? Variant { get; init; }
}
