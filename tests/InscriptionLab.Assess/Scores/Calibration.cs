using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Assess.Scores;

/// <summary>Whether letters said to be 90 % sure are right nine times of ten.</summary>
/// <param name="Letters">Letters looked at.</param>
/// <param name="Right">Letters that were right.</param>
/// <param name="ExpectedError">Expected calibration error with ten bins of equal width: the mean distance between probability and share right, weighted by letters (Guo et al., ICML 2017, equation 3).</param>
/// <param name="MeanProbability">Mean of the probabilities stated.</param>
internal sealed record Calibration(int Letters, int Right, double ExpectedError, double MeanProbability)
{
    private const int Bins = 10;

    /// <summary>Gives the calibration of some letters, or null where there are none.</summary>
    internal static Calibration? Of(IReadOnlyCollection<(double Probability, bool Right)> letters)
    {
        if (letters.Count == 0)
        {
            return null;
        }

        var error = letters
            .GroupBy(letter => Math.Min(Bins - 1, (int)(letter.Probability * Bins)))
            .Sum(bin => Math.Abs(bin.Sum(letter => letter.Probability) - bin.Count(letter => letter.Right)));
        return new Calibration(letters.Count, letters.Count(letter => letter.Right), error / letters.Count, letters.Average(letter => letter.Probability));
    }
}
