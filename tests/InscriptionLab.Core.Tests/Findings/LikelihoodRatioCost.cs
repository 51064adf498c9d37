using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Core.Tests.Findings;

/// <summary>The log-likelihood-ratio cost, by which likelihood ratios are judged on cases of known truth, parted in two (N. Brümmer and J. du Preez, Computer Speech and Language 20 (2006) 230-275).</summary>
internal static class LikelihoodRatioCost
{
    /// <summary>
    /// Gives the log-likelihood-ratio cost of a method on cases of known truth, 0 for a perfect and 1 for an uninformative one:
    /// half the sum of the means of log2(1 + 1/LR) where the first proposition is true and of log2(1 + LR) where the second is.
    /// </summary>
    /// <param name="whereFirstIsTrue">Ratios of the cases in which the first proposition is true; above zero, at least one.</param>
    /// <param name="whereSecondIsTrue">Ratios of the other cases; zero or more, at least one.</param>
    /// <exception cref="ArgumentException">One of the two has no cases.</exception>
    internal static double Of(IReadOnlyCollection<double> whereFirstIsTrue, IReadOnlyCollection<double> whereSecondIsTrue)
    {
        if (whereFirstIsTrue.Count == 0 || whereSecondIsTrue.Count == 0)
        {
            throw new ArgumentException("There must be cases of both kinds.", whereFirstIsTrue.Count == 0 ? nameof(whereFirstIsTrue) : nameof(whereSecondIsTrue));
        }

        return (whereFirstIsTrue.Average(ratio => Math.Log2(1 + (1 / ratio))) + whereSecondIsTrue.Average(ratio => Math.Log2(1 + ratio))) / 2;
    }

    /// <summary>
    /// Gives the least cost that a monotone change of the ratios can reach, found by pooling adjacent violators: how well the method tells apart. What the
    /// ratios as they are cost beyond it is what calibration costs.
    /// </summary>
    /// <param name="whereFirstIsTrue">Ratios of the cases in which the first proposition is true; at least one.</param>
    /// <param name="whereSecondIsTrue">Ratios of the other cases; at least one.</param>
    /// <exception cref="ArgumentException">One of the two has no cases.</exception>
    internal static double Least(IReadOnlyCollection<double> whereFirstIsTrue, IReadOnlyCollection<double> whereSecondIsTrue)
    {
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
        return Of(
            [.. blocks.SelectMany(block => Enumerable.Repeat(Ratio(block), (int)block.First))],
            [.. blocks.SelectMany(block => Enumerable.Repeat(Ratio(block), (int)block.Second))]);
    }

    private static double Share((double First, double Second) block) => block.First / (block.First + block.Second);
}
