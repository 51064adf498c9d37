namespace InscriptionLab.Comparison;

/// <summary>The letters of a reading that a form was laid over, ends included.</summary>
/// <param name="FirstLine">Line of the first letter, from 0.</param>
/// <param name="FirstLetter">Index of the first letter in its line.</param>
/// <param name="LastLine">Line of the last letter.</param>
/// <param name="LastLetter">Index of the last letter in its line.</param>
public sealed record MatchedSpan(int FirstLine, int FirstLetter, int LastLine, int LastLetter)
{
    /// <summary>Tells whether two spans have a letter in common.</summary>
    public bool Overlaps(MatchedSpan other)
    {
        System.ArgumentNullException.ThrowIfNull(other);
        return (FirstLine, FirstLetter).CompareTo((other.LastLine, other.LastLetter)) <= 0
            && (other.FirstLine, other.FirstLetter).CompareTo((LastLine, LastLetter)) <= 0;
    }

    /// <summary>Tells whether a letter lies in the span.</summary>
    public bool Holds(int line, int letter) =>
        (FirstLine, FirstLetter).CompareTo((line, letter)) <= 0 && (line, letter).CompareTo((LastLine, LastLetter)) <= 0;
}
