using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Findings;

/// <summary>
/// Parts the log-likelihood-ratio cost in two: what the best monotone recalibration would still cost (how well the method tells apart), and what
/// calibration costs (N. Brümmer and J. du Preez, Computer Speech and Language 20 (2006) 230-275). The recalibration is found by pooling adjacent violators.
/// </summary>
public static class CalibrationCost
{
    /// <summary>Gives the least cost that a monotone change of the ratios can reach.</summary>
    /// <param name="whereFirstIsTrue">Ratios of the cases in which the first proposition is true; at least one.</param>
    /// <param name="whereSecondIsTrue">Ratios of the other cases; at least one.</param>
    /// <exception cref="ArgumentException">One of the two has no cases.</exception>
    public static double Least(IReadOnlyCollection<double> whereFirstIsTrue, IReadOnlyCollection<double> whereSecondIsTrue)
    {
        ArgumentNullException.ThrowIfNull(whereFirstIsTrue);
        ArgumentNullException.ThrowIfNull(whereSecondIsTrue);
        var (first, second) = ((double)whereFirstIsTrue.Count, (double)whereSecondIsTrue.Count);

        // Equal ratios stay equal: a monotone change is a function of the ratio.
        var blocks = new List<(double First, double Second)>();
        foreach (var equal in whereFirstIsTrue.Select(ratio => (ratio, IsFirst: true)).Concat(whereSecondIsTrue.Select(ratio => (ratio, IsFirst: false))).GroupBy(pair => pair.ratio).OrderBy(group => group.Key))
        {
            var block = (First: (double)equal.Count(pair => pair.IsFirst), Second: (double)equal.Count(pair => !pair.IsFirst));
            while (blocks.Count > 0 && Share(blocks[^1]) >= Share(block))
            {
                block = (block.First + blocks[^1].First, block.Second + blocks[^1].Second);
                blocks.RemoveAt(blocks.Count - 1);
            }

            blocks.Add(block);
        }

        double Ratio((double First, double Second) block) => block.First / first / (block.Second / second);
        return EvidenceMath.LogLikelihoodRatioCost(
            [.. blocks.SelectMany(block => Enumerable.Repeat(Ratio(block), (int)block.First))],
            [.. blocks.SelectMany(block => Enumerable.Repeat(Ratio(block), (int)block.Second))]);
    }

    private static double Share((double First, double Second) block) => block.First / (block.First + block.Second);
}
