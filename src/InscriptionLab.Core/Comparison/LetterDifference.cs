using InscriptionLab.Measures;

namespace InscriptionLab.Comparison;

/// <summary>One place where a reading and a form differ.</summary>
/// <param name="Attested">Letter of the form; empty where the reading has a letter too many; two letters where the reading has one in their place.</param>
/// <param name="Read">Letter as read; empty where the reading lacks the letter; "?" where it cannot be read.</param>
/// <param name="Probability">Probability that the letters really differ here: that the letter cut is not <paramref name="Attested"/> but its strongest rival, the two taken as equally likely beforehand.</param>
/// <param name="LineIndex">Line of the reading, from 0.</param>
/// <param name="LetterIndex">Index into the line's letters (spaces counted), or where the missing letter would stand.</param>
public sealed record LetterDifference(string Attested, string Read, Probability Probability, int LineIndex, int LetterIndex)
{
    /// <summary>Gets in what way they differ.</summary>
    public DifferenceKind Kind { get; init; }

    /// <summary>
    /// Gets the decimal logarithm of P(picture | <see cref="Attested"/> is cut) over P(picture | the strongest rival is cut), cut off at
    /// <see cref="ComparerOptions.MaximumLog10Ratio"/> on either side; below zero where the picture speaks against the attested letter.
    /// </summary>
    public double Log10Ratio { get; init; }

    /// <summary>Gets the strongest rival of the attested letter; empty where it is "no letter here". It is the letter read, but where that cannot be read.</summary>
    public string Rival { get; init; } = string.Empty;

    /// <summary>Gets the index of the attested letter in the form (grapheme clusters, spaces counted), or where the added letter would stand.</summary>
    public int FormIndex { get; init; }

    /// <summary>Gets a value indicating whether the reader has no class for the attested letter, so that it could never have read it.</summary>
    public bool IsBeyondReader { get; init; }

    /// <summary>Gets a value indicating whether this is a difference of spelling and not of case, letter shape, punctuation or spacing.</summary>
    public bool IsSpelling => Kind is DifferenceKind.Replaced or DifferenceKind.Missing or DifferenceKind.Added or DifferenceKind.Swapped;
}
