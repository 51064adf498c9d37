using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using MathNet.Numerics.Distributions;

namespace InscriptionLab.Cells;

/// <summary>
/// Combines photos of one cell: the mean of the diameters, its scatter as a Type A evaluation (GUM, JCGM 100:2008, clause 4.2), and what is the same
/// in every photo, which no mean makes smaller. The coverage factor comes from the effective degrees of freedom (clause G.4), since few photos fix a scatter badly.
/// </summary>
public static class RepeatedPhotos
{
    /// <summary>Coverage probability for which k = 2 holds where degrees of freedom are many (GUM, table G.1).</summary>
    private const double Coverage = 0.9545;

    /// <summary>Probability by chance below which the photos are said to disagree.</summary>
    private const double Chance = 0.01;

    /// <summary>Combines the photos, circle by circle.</summary>
    /// <param name="photos">Measurements of the same cell, each from a photo of its own; circles seen in fewer than two are left out.</param>
    public static ImmutableArray<RepeatedCircle> Combine(IReadOnlyList<CellMeasurement> photos)
    {
        ArgumentNullException.ThrowIfNull(photos);
        return
        [
            .. Enum.GetValues<CircleRole>()
                .Select(role => photos.SelectMany(p => p.Circles.Where(c => c.Role == role)).ToArray())
                .Where(circles => circles.Length > 1)
                .Select(Combine),
        ];
    }

    private static RepeatedCircle Combine(CellCircle[] circles)
    {
        var values = circles.Select(c => c.Diameter.Value.Millimetres).ToArray();
        var mean = values.Average();
        var square = values.Sum(v => (v - mean) * (v - mean));
        var seen = Math.Sqrt(square / (values.Length - 1) / values.Length);
        var readings = circles.Select(c => Math.Sqrt(c.Budget.Rows.Where(r => r.VariesByPhoto).Sum(r => r.Contribution * r.Contribution))).ToArray();
        var expected = Math.Sqrt(readings.Sum(u => u * u)) / values.Length;

        // Two or three photos agree closely by chance; the mean is not taken to be better than its readings allow.
        BudgetRow scatter = seen >= expected
            ? new("scatter between the photos", seen, "mm", 1, values.Length - 1, string.Create(CultureInfo.InvariantCulture, $"{values.Length} photos, standard deviation of their mean (Type A)"))
            : new("readings of the photos", expected, "mm", 1, Degrees(circles), string.Create(CultureInfo.InvariantCulture, $"{values.Length} photos, which agree better than their readings promise"));
        var common = circles
            .SelectMany(c => c.Budget.Rows.Where(r => !r.VariesByPhoto))
            .GroupBy(r => r.Source, StringComparer.Ordinal)
            .Select(g => new BudgetRow(g.Key, g.Sum(r => r.Contribution) / values.Length, "mm", 1, g.Min(r => r.DegreesOfFreedom), g.First().Basis + "; the same in every photo"));
        var budget = new UncertaintyBudget([scatter, .. common]);
        var factor = Math.Max(UncertaintyBudget.CoverageFactor, budget.CoverageFactorFor(Coverage));
        return new RepeatedCircle(
            circles[0].Role,
            new Measured(Length.FromMillimetres(mean), Length.FromMillimetres(factor * budget.CombinedStandardUncertainty), factor),
            budget,
            [.. values.Select(Length.FromMillimetres)],
            Disagreement(values, readings));
    }

    private static double Degrees(CellCircle[] circles) =>
        circles.SelectMany(c => c.Budget.Rows).Where(r => r.VariesByPhoto).Select(r => r.DegreesOfFreedom).DefaultIfEmpty(1).Min();

    /// <summary>Holds the scatter against the readings by the chi-squared test, the photos weighed by their readings.</summary>
    private static string? Disagreement(double[] values, double[] readings)
    {
        if (readings.Any(u => !(u > 0)))
        {
            return null;
        }

        var weights = readings.Select(u => 1 / (u * u)).ToArray();
        var mean = values.Zip(weights, (v, w) => v * w).Sum() / weights.Sum();
        var chi = values.Zip(weights, (v, w) => (v - mean) * (v - mean) * w).Sum();
        return chi > ChiSquared.InvCDF(values.Length - 1, 1 - Chance)
            ? "The photos differ more than their readings explain: see whether scale and rim lie level in each of them, and whether each shows the same cell."
            : null;
    }
}
