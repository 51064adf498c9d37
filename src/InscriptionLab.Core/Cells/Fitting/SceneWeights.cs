using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Scatter and weight of one run of readings, estimated from their residuals.</summary>
internal sealed class SceneWeights
{
    /// <summary>Standard deviation of a reading before the first fit, in pixels.</summary>
    private const double FirstScatter = 0.5;

    /// <summary>No scatter is believed below this, in pixels: an 8-bit JPEG does not give more.</summary>
    private const double SmallestScatter = 0.02;

    /// <summary>Tukey's constant: residuals beyond this many standard deviations have no weight (95 % efficiency, common practice).</summary>
    private const double Tukey = 4.685;

    /// <summary>Median absolute deviation of a normal distribution of unit standard deviation.</summary>
    private const double MedianOfNormal = 0.6745;

    /// <summary>Most that correlation of neighbouring readings may widen their scatter.</summary>
    private const double LargestInflation = 6;

    /// <summary>Autocorrelation below which readings count as independent.</summary>
    private const double SmallestCorrelation = 0.05;
    private const int FewestReadings = 20;

    private readonly double? _known;

    /// <summary>Makes weights of one.</summary>
    /// <param name="count">Readings.</param>
    /// <param name="known">Standard deviation of one reading in pixels where it is known beforehand and not estimated.</param>
    internal SceneWeights(int count, double? known = null)
    {
        Roots = Enumerable.Repeat(1.0, count).ToArray();
        _known = known;
        Scatter = known ?? FirstScatter;
    }

    /// <summary>Gets the root of each reading's weight, 0 to 1.</summary>
    internal double[] Roots { get; }

    /// <summary>Gets the standard deviation of one reading in pixels.</summary>
    internal double Scatter { get; private set; }

    /// <summary>Gets the factor by which readings in order are less independent than their number says.</summary>
    internal double Inflation { get; private set; } = 1;

    /// <summary>Gets the factor that turns a residual in pixels into standard uncertainties, but for the reading's own weight.</summary>
    internal double Unit => 1 / (Scatter * Inflation);

    /// <summary>Gets the minus logarithm of the likelihood of the readings, but for a constant, with Tukey's bounded loss for each: a fit that leaves half of them out is not thereby a good one. Correlated readings count as the fewer they are worth.</summary>
    internal double LogScatter => ((Roots.Length * Math.Log(Scatter)) + Roots.Sum(r => Tukey * Tukey / 6 * (1 - (r * r * r)))) / (Inflation * Inflation);

    /// <summary>Estimates anew from raw residuals in pixels.</summary>
    internal void Update(ReadOnlySpan<double> residuals, bool robust, int unknowns)
    {
        if (residuals.IsEmpty || _known is not null)
        {
            return;
        }

        var spread = Math.Max(SmallestScatter, MedianScatter(residuals));
        var (sum, total) = (0.0, 0);
        for (var i = 0; i < Roots.Length; i++)
        {
            // The residual is multiplied by the root of Tukey's weight.
            var u = residuals[i] / (Tukey * spread);
            Roots[i] = !robust || Math.Abs(u) < 1 ? (robust ? 1 - (u * u) : 1) : 0;
            if (Roots[i] > 0)
            {
                sum += residuals[i] * residuals[i];
                total++;
            }
        }

        Scatter = Math.Max(SmallestScatter, total > unknowns ? Math.Sqrt(sum / (total - unknowns)) : spread);
        Inflation = Correlation(residuals);
    }

    private static double MedianScatter(ReadOnlySpan<double> values)
    {
        var sizes = values.ToArray();
        for (var i = 0; i < sizes.Length; i++)
        {
            sizes[i] = Math.Abs(sizes[i]);
        }

        Array.Sort(sizes);
        return sizes[sizes.Length / 2] / MedianOfNormal;
    }

    /// <summary>Root of the integrated autocorrelation of the readings in their order.</summary>
    private double Correlation(ReadOnlySpan<double> residuals)
    {
        var kept = new List<double>();
        for (var i = 0; i < Roots.Length; i++)
        {
            if (Roots[i] > 0)
            {
                kept.Add(residuals[i]);
            }
        }

        if (kept.Count < FewestReadings)
        {
            return 1;
        }

        var mean = kept.Average();
        var variance = kept.Sum(v => (v - mean) * (v - mean));
        var sum = 1.0;
        for (var lag = 1; lag < kept.Count / 4; lag++)
        {
            var product = 0.0;
            for (var i = 0; i + lag < kept.Count; i++)
            {
                product += (kept[i] - mean) * (kept[i + lag] - mean);
            }

            if (product < SmallestCorrelation * variance)
            {
                break;
            }

            sum += 2 * product / variance;
        }

        return Math.Clamp(Math.Sqrt(sum), 1, LargestInflation);
    }
}
