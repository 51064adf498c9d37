using System;
using System.Collections.Generic;
using System.Linq;

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

    /// <summary>Gives the probability that belongs to odds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The odds are negative or not a number.</exception>
    public static double ProbabilityOf(double odds)
    {
        Refuse(odds, nameof(odds));
        return double.IsPositiveInfinity(odds) ? 1 : odds / (1 + odds);
    }

    /// <summary>
    /// Gives the log-likelihood-ratio cost of a method on cases of known truth, 0 for a perfect and 1 for an uninformative one:
    /// half the sum of the means of log2(1 + 1/LR) where the first proposition is true and of log2(1 + LR) where the second is
    /// (N. Brümmer and J. du Preez, Computer Speech and Language 20 (2006) 230-275).
    /// </summary>
    /// <param name="whereFirstIsTrue">Ratios of the cases in which the first proposition is true; above zero, at least one.</param>
    /// <param name="whereSecondIsTrue">Ratios of the other cases; zero or more, at least one.</param>
    /// <exception cref="ArgumentException">One of the two has no cases.</exception>
    public static double LogLikelihoodRatioCost(IReadOnlyCollection<double> whereFirstIsTrue, IReadOnlyCollection<double> whereSecondIsTrue)
    {
        ArgumentNullException.ThrowIfNull(whereFirstIsTrue);
        ArgumentNullException.ThrowIfNull(whereSecondIsTrue);
        if (whereFirstIsTrue.Count == 0 || whereSecondIsTrue.Count == 0)
        {
            throw new ArgumentException("There must be cases of both kinds.", whereFirstIsTrue.Count == 0 ? nameof(whereFirstIsTrue) : nameof(whereSecondIsTrue));
        }

        return (whereFirstIsTrue.Average(ratio => Math.Log2(1 + (1 / ratio))) + whereSecondIsTrue.Average(ratio => Math.Log2(1 + ratio))) / 2;
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
