using System;
using MathNet.Numerics.Distributions;

namespace InscriptionLab.Cells;

/// <summary>Checks a budget by drawing its inputs at random (Monte Carlo method, JCGM 101:2008): each from Student's distribution with its degrees of freedom, as clause 6.4.9 asks.</summary>
public static class BudgetSimulation
{
    /// <summary>Gives half the width of the shortest symmetric interval that holds a share of the draws, in the result's unit.</summary>
    /// <param name="budget">Budget.</param>
    /// <param name="coverage">Share of the draws, between 0 and 1.</param>
    /// <param name="draws">Draws; a hundred thousand fix the interval to about half a per cent.</param>
    /// <param name="seed">Seed: the same seed gives the same result.</param>
    public static double HalfWidth(UncertaintyBudget budget, double coverage, int draws, int seed)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 1);
        if (!(coverage > 0 && coverage < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability lies between 0 and 1.");
        }

#pragma warning disable CA5394 // A simulation is no secret, and must repeat.
        var random = new Random(seed);
#pragma warning restore CA5394
        var sizes = new double[draws];
        foreach (var row in budget.Rows)
        {
            var drawn = new double[draws];
            if (double.IsPositiveInfinity(row.DegreesOfFreedom))
            {
                Normal.Samples(random, drawn, 0, 1);
            }
            else
            {
                StudentT.Samples(random, drawn, 0, 1, row.DegreesOfFreedom);
            }

            for (var i = 0; i < draws; i++)
            {
                sizes[i] += row.Contribution * drawn[i];
            }
        }

        for (var i = 0; i < draws; i++)
        {
            sizes[i] = Math.Abs(sizes[i]);
        }

        Array.Sort(sizes);
        return sizes[Math.Min(draws - 1, (int)(coverage * draws))];
    }
}
