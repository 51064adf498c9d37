using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Assess.Scores;

/// <summary>What is left where letters under a probability count as unclear: one point of the risk-coverage curve (El-Yaniv and Wiener, JMLR 11, 2010).</summary>
/// <param name="From">The probability from which on a letter is kept.</param>
/// <param name="Kept">Letters kept.</param>
/// <param name="Wrong">Of those, letters that are wrong.</param>
/// <param name="Letters">Letters read in all.</param>
internal sealed record KeptLetters(double From, int Kept, int Wrong, int Letters)
{
    /// <summary>The points shown; 0.9 is where a transcription begins to dot its letters.</summary>
    private static readonly ImmutableArray<double> Points = [0, 0.5, 0.8, 0.9, 0.95, 0.99];

    /// <summary>Gives the points of the curve.</summary>
    internal static ImmutableArray<KeptLetters> Of(IReadOnlyCollection<(double Probability, bool Right)> letters) => letters.Count == 0
        ? []
        : [.. Points.Select(from => new KeptLetters(from, letters.Count(letter => letter.Probability >= from), letters.Count(letter => letter.Probability >= from && !letter.Right), letters.Count))];
}
