using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Lines;
using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>One line as read, exactly as cut: nothing is corrected, completed or normalised.</summary>
/// <param name="Line">Where the line is.</param>
/// <param name="Letters">Letters in reading order, spaces included.</param>
/// <param name="Confidence">Probability that the whole line is right.</param>
/// <param name="Posteriors">What the reader saw frame by frame, or null for a reader that does not tell.</param>
public sealed record LineReading(LetteringLine Line, ImmutableArray<Letter> Letters, Probability Confidence, LinePosteriors? Posteriors)
{
    /// <summary>Gets what a second, independent reader made of the line; null where there was none.</summary>
    public SecondReading? Second { get; init; }

    /// <summary>Gets the styles in which this line may be cut, the likeliest first; empty for a reader that does not tell, and for a line that several photos or a person made.</summary>
    public ImmutableArray<StyleCandidate> Style { get; init; } = [];

    /// <summary>Gets the text, "?" for letters that cannot be read.</summary>
    public string Text => string.Concat(Letters.Select(letter => letter.Character));
}
