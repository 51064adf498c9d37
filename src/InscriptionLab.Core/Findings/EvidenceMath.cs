using System;

namespace InscriptionLab.Findings;

/// <summary>Arithmetic of likelihood ratios.</summary>
public static class EvidenceMath
{
    /// <summary>Gives the odds after the evidence: the ratio times the odds before it (Bayes' theorem in odds form).</summary>
    /// <param name="likelihoodRatio">P(evidence | first) over P(evidence | second), zero or more.</param>
    /// <param name="priorOdds">Odds of the first over the second before the evidence, zero or more; they belong to the reader of a report, not to its writer.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative or not a number.</exception>
    public static double PosteriorOdds(double likelihoodRatio, double priorOdds)
    {
        Refuse(likelihoodRatio, nameof(likelihoodRatio));
        Refuse(priorOdds, nameof(priorOdds));
        return likelihoodRatio * priorOdds;
    }

    /// <summary>Gives a ratio with its decimal logarithm cut off on both sides, for statements that may not go beyond what they are based on.</summary>
    public static double Capped(double log10Ratio, double maximum)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(maximum);
        return Math.Clamp(log10Ratio, -maximum, maximum);
    }

    private static void Refuse(double value, string name)
    {
        if (!(value >= 0))
        {
            throw new ArgumentOutOfRangeException(name, value, "The number must be zero or more.");
        }
    }
}
