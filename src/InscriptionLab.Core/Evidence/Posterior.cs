using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Findings;

namespace InscriptionLab.Evidence;

/// <summary>Probabilities of the three propositions after the evidence, for the prior that the user gave (Bayes' theorem).</summary>
/// <param name="House">Of the house.</param>
/// <param name="Period">Of another of its time.</param>
/// <param name="Modern">Of a modern decorative piece.</param>
public sealed record Posterior(double House, double Period, double Modern)
{
    /// <summary>Gives the posterior: odds of each other proposition against the house, from the capped ratios that are printed.</summary>
    internal static Posterior Of(PriorOdds prior, ImmutableArray<PairRatio> ratios)
    {
        double OddsAgainstHouse(Proposition other)
        {
            var ratio = ratios.Single(pair => pair.First == Proposition.House && pair.Second == other);
            return EvidenceMath.PosteriorOdds(Math.Pow(10, -ratio.Log10Ratio), prior.Of(other) / prior.House);
        }

        var (period, modern) = (OddsAgainstHouse(Proposition.PeriodOther), OddsAgainstHouse(Proposition.Modern));
        var house = 1 / (1 + period + modern);
        return new Posterior(house, house * period, house * modern);
    }
}
