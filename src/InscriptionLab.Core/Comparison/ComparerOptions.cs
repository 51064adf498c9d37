using System;

namespace InscriptionLab.Comparison;

/// <summary>Costs of the comparison, in letters, and bounds of the search. A letter replaced, missing, added or swapped with its neighbour costs 1 where the picture is certain, and less the better the picture allows the attested letter.</summary>
public sealed record ComparerOptions
{
    /// <summary>Gets the cost of a space more or less.</summary>
    /// <value>Default 0.25: readers of engraved lines put in and drop narrow spaces, and engravers spaced by eye; four of them weigh as one letter.</value>
    public double SpacingCost { get; init; } = 0.25;

    /// <summary>Gets the cost of a stop, comma, apostrophe or hyphen more, less or other.</summary>
    /// <value>Default 0.25, as a space: a stop is one dot, the first thing that wears away.</value>
    public double PunctuationCost { get; init; } = 0.25;

    /// <summary>Gets the cost of a letter in the other case inside a word.</summary>
    /// <value>Default 0.1: c, o, s, v, w, x and z have one shape in two sizes, so that the case is often not to be seen.</value>
    public double CaseCost { get; init; } = 0.1;

    /// <summary>Gets the cost of the same letter in another shape (long s, raised letters).</summary>
    /// <value>Default 0.25: a habit of the engraver's hand, not of spelling.</value>
    public double LetterFormCost { get; init; } = 0.25;

    /// <summary>Gets the least cost of a letter that cannot be read.</summary>
    /// <value>Default 0.5: half a difference, for it may be the attested letter or not.</value>
    public double UnreadableCost { get; init; } = 0.5;

    /// <summary>Gets how many letters of agreement one letter of distance outweighs when forms are ranked: a form stands at its letters minus this times its distance.</summary>
    /// <value>Default 2.5, less than the four letters of "&amp; Son", so that "Xy &amp; Sons" is laid beside "Xy &amp; Son" and not beside "Xy" alone; see the tests.</value>
    public double LettersPerDifference { get; init; } = 2.5;

    /// <summary>Gets the share of the probability left over by the listed alternatives that one unlisted letter may hold.</summary>
    /// <value>Default 0.5, a choice on the careful side: the commonest confusion of a letter takes a large part of its errors. Never more than the least listed alternative.</value>
    public double UnlistedShare { get; init; } = 0.5;

    /// <summary>Gets the probability that a reader overlooks a letter that is cut, where neither its alternatives nor its frames tell.</summary>
    /// <value>Default 0.005, a choice on the careful side of log10 ratio 2; raised to <see cref="UnlistedShare"/> of a neighbour's doubt.</value>
    public double OverlookedLetter { get; init; } = 0.005;

    /// <summary>Gets the probability that a reader overlooks or invents a stop, comma, apostrophe, hyphen or space.</summary>
    /// <value>Default 0.2, a choice: such differences are reported and never decide.</value>
    public double OverlookedPunctuation { get; init; } = 0.2;

    /// <summary>Gets the largest decimal logarithm of a ratio at one letter.</summary>
    /// <value>Default 4: one in 10,000 is as rare an error as a calibration on some ten thousand letters can vouch for.</value>
    public double MaximumLog10Ratio { get; init; } = 4;

    /// <summary>Gets the height of small letters in the photo, in pixels, below which lettering counts as small; of capitals where there are no others.</summary>
    /// <value>Default 18: 20 is what text recognition asks for (common practice), and the boxes of letters come out up to a tenth lower than the letters are.</value>
    public double SmallLetters { get; init; } = 18;

    /// <summary>Gets the decimal logarithm of the largest ratio that one letter of small lettering may have, and half that of two letters swapped.</summary>
    /// <value>Default 1.85, a ratio of 70: of 147 letters below 20 pixels that the reader was sure of (0.9 and more), on rendered photos, one was wrong, so that by the rule of
    /// succession two in 149 may be. From 20 pixels up none of 162 was.</value>
    public double MaximumLog10OfSmallLetter { get; init; } = 1.85;

    /// <summary>Gets the largest probability that a letter was overlooked beside one that is in doubt.</summary>
    /// <value>Default 0.1: a doubt about which letter is cut is seldom a doubt about how many; of 359 letters measured on rendered photos none was overlooked.</value>
    public double OverlookedBesideDoubt { get; init; } = 0.1;

    /// <summary>Gets how many adjacent lines one form may run over.</summary>
    /// <value>Default 3, as in name, "&amp;", name.</value>
    public int MaximumJoinedLines { get; init; } = 3;

    /// <summary>Gets the probability from which an alternative letter takes part in the search for candidates.</summary>
    /// <value>Default 0.05: a rival below one in twenty still meets its form through the other letters.</value>
    public double AlternativeFloor { get; init; } = 0.05;

    /// <summary>Gets a value indicating whether every form of the list is laid over every line, with no bound that leaves out what cannot be among the nearest.</summary>
    /// <value>Default false; true is slow and gives the same, which a test shows.</value>
    public bool LaysEveryForm { get; init; }

    /// <summary>Gets how many forms a comparison lists.</summary>
    /// <value>Default 8.</value>
    public int MaximumNearest { get; init; } = 8;

    /// <summary>Checks the numbers against each other.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    internal void Validate()
    {
        foreach (var cost in (ReadOnlySpan<double>)[SpacingCost, PunctuationCost, CaseCost, LetterFormCost, UnreadableCost, UnlistedShare, AlternativeFloor])
        {
            ArgumentOutOfRangeException.ThrowIfNegative(cost);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(cost, 1);
        }

        foreach (var probability in (ReadOnlySpan<double>)[OverlookedLetter, OverlookedPunctuation, OverlookedBesideDoubt])
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(probability);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(probability, 1);
        }

        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(LettersPerDifference);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaximumLog10Ratio);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaximumLog10OfSmallLetter);
        ArgumentOutOfRangeException.ThrowIfNegative(SmallLetters);
        ArgumentOutOfRangeException.ThrowIfLessThan(MaximumJoinedLines, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(MaximumNearest, 1);
    }
}
