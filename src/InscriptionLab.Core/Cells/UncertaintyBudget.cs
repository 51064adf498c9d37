using System;
using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace InscriptionLab.Cells;

/// <summary>An uncertainty budget of independent inputs after the GUM (JCGM 100:2008): law of propagation, clause 5.1.2; effective degrees of freedom by Welch and Satterthwaite, clause G.4.</summary>
public sealed record UncertaintyBudget
{
    /// <summary>Coverage factor used for every result: about 95 % where the effective degrees of freedom are many (GUM, clause 6.3.3).</summary>
    public const double CoverageFactor = 2;

    /// <summary>Makes a budget.</summary>
    /// <param name="rows">Independent inputs, one row each.</param>
    /// <exception cref="ArgumentException">A row has a negative or undefined uncertainty or no degrees of freedom.</exception>
    public UncertaintyBudget(ImmutableArray<BudgetRow> rows)
    {
        foreach (var row in rows)
        {
            if (!(row.StandardUncertainty >= 0) || !double.IsFinite(row.Contribution) || !(row.DegreesOfFreedom > 0))
            {
                throw new ArgumentException($"The row \"{row.Source}\" needs a finite uncertainty of zero or more and degrees of freedom above zero.", nameof(rows));
            }
        }

        Rows = rows;
    }

    /// <summary>Gets the rows.</summary>
    public ImmutableArray<BudgetRow> Rows { get; }

    /// <summary>Gets the combined standard uncertainty: the root of the sum of squared contributions (GUM, equation 10).</summary>
    public double CombinedStandardUncertainty
    {
        get
        {
            var sum = 0.0;
            foreach (var row in Rows)
            {
                sum += row.Contribution * row.Contribution;
            }

            return Math.Sqrt(sum);
        }
    }

    /// <summary>Gets the effective degrees of freedom (GUM, equation G.2b); infinity where every row's uncertainty is taken as known.</summary>
    public double EffectiveDegreesOfFreedom
    {
        get
        {
            var sum = 0.0;
            foreach (var row in Rows)
            {
                sum += Math.Pow(row.Contribution, 4) / row.DegreesOfFreedom;
            }

            return sum > 0 ? Math.Pow(CombinedStandardUncertainty, 4) / sum : double.PositiveInfinity;
        }
    }

    /// <summary>Gets the expanded uncertainty U = k u_c with k = 2.</summary>
    public double ExpandedUncertainty => CoverageFactor * CombinedStandardUncertainty;

    /// <summary>Gives the coverage factor for a coverage probability from Student's distribution with the effective degrees of freedom, cut down to the next whole number (GUM, clause G.4.1).</summary>
    /// <param name="coverage">Coverage probability, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is not between 0 and 1.</exception>
    public double CoverageFactorFor(double coverage)
    {
        if (!(coverage > 0 && coverage < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability lies between 0 and 1.");
        }

        var degrees = Math.Max(1, Math.Floor(EffectiveDegreesOfFreedom));
        var upper = 0.5 + (coverage / 2);
        return double.IsPositiveInfinity(degrees) ? Normal.InvCDF(0, 1, upper) : StudentT.InvCDF(0, 1, degrees, upper);
    }
}
