using System;
using System.Collections.Generic;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>
/// Light along a short line across an edge. Edge model: a step blurred evenly to both sides, whose place is where the slope, taken with a
/// Gaussian's derivative, is steepest; a parabola through the three steepest samples gives the fraction.
/// </summary>
internal sealed class EdgeProfile
{
    /// <summary>Distance of samples along the profile, in pixels.</summary>
    internal const double Step = 0.25;

    /// <summary>Standard deviation of the Gaussian whose derivative is taken, in pixels: about a sharp photo's own blur (common practice).</summary>
    internal const double Smoothing = 0.9;

    private static readonly double[] Kernel = MakeKernel();
    private readonly double[] _slope;
    private readonly double _from;

    private EdgeProfile(double[] slope, double from)
    {
        _slope = slope;
        _from = from;
    }

    /// <summary>Samples across an edge.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="at">Middle of the line.</param>
    /// <param name="normalX">X of the unit direction of the line.</param>
    /// <param name="normalY">Y of the unit direction of the line.</param>
    /// <param name="reach">How far the slope is wanted to each side, in pixels.</param>
    /// <param name="halfWidth">Half width along the edge over which the light is averaged, in pixels.</param>
    internal static EdgeProfile Across(LightPicture picture, PixelPoint at, double normalX, double normalY, double reach, double halfWidth)
    {
        var half = Kernel.Length / 2;
        var wanted = (int)Math.Ceiling(reach / Step);
        var count = (2 * (wanted + half)) + 1;
        var light = new double[count];
        var rows = Math.Max(0, (int)Math.Round(halfWidth));
        for (var i = 0; i < count; i++)
        {
            var along = (i - wanted - half) * Step;
            var sum = 0.0;
            for (var j = -rows; j <= rows; j++)
            {
                sum += picture.At(at.X + (along * normalX) - (j * normalY), at.Y + (along * normalY) + (j * normalX));
            }

            light[i] = sum / ((2 * rows) + 1);
        }

        return FromLight(light, -wanted * Step);
    }

    /// <summary>Takes the slope of light already sampled; the light reaches half a kernel further than the wanted slope on both sides.</summary>
    /// <param name="light">Light at steps of <see cref="Step"/>.</param>
    /// <param name="from">Place of the first wanted slope.</param>
    internal static EdgeProfile FromLight(double[] light, double from)
    {
        var slope = new double[light.Length - Kernel.Length + 1];
        for (var i = 0; i < slope.Length; i++)
        {
            var sum = 0.0;
            for (var k = 0; k < Kernel.Length; k++)
            {
                sum += Kernel[k] * light[i + k];
            }

            slope[i] = sum;
        }

        return new EdgeProfile(slope, from);
    }

    /// <summary>Gives how many samples of light lie beyond the wanted slope on each side.</summary>
    internal static int Margin => Kernel.Length / 2;

    /// <summary>Gives every place where the slope is steepest among its neighbours, with the slope there (positive where light grows along the line), in light a pixel.</summary>
    internal IReadOnlyList<(double Place, double Slope)> Extrema()
    {
        var found = new List<(double, double)>();
        for (var i = 1; i < _slope.Length - 1; i++)
        {
            var size = Math.Abs(_slope[i]);
            if (size >= Math.Abs(_slope[i - 1]) && size > Math.Abs(_slope[i + 1]) && Math.Sign(_slope[i - 1]) == Math.Sign(_slope[i]) && Math.Sign(_slope[i + 1]) == Math.Sign(_slope[i]))
            {
                var (l, m, r) = (Math.Abs(_slope[i - 1]), size, Math.Abs(_slope[i + 1]));
                var curvature = l - (2 * m) + r;
                var shift = curvature < 0 ? 0.5 * (l - r) / curvature : 0;
                found.Add((_from + ((i + shift) * Step), _slope[i]));
            }
        }

        return found;
    }

    /// <summary>Gives the steepest place, or null where the light is flat.</summary>
    internal (double Place, double Slope)? Steepest()
    {
        (double Place, double Slope)? best = null;
        foreach (var (place, slope) in Extrema())
        {
            if (best is null || Math.Abs(slope) > Math.Abs(best.Value.Slope))
            {
                best = (place, slope);
            }
        }

        return best;
    }

    /// <summary>Gives the standard deviation, in pixels, by which the steepest edge is blurred, from the width of its slope at half height; null where the slope does not fall that far on both sides.</summary>
    internal double? Blur()
    {
        var top = 0;
        for (var i = 1; i < _slope.Length; i++)
        {
            top = Math.Abs(_slope[i]) > Math.Abs(_slope[top]) ? i : top;
        }

        var half = _slope[top] / 2;
        double? Side(int step)
        {
            for (var i = top + step; i >= 0 && i < _slope.Length; i += step)
            {
                if (Math.Abs(_slope[i]) <= Math.Abs(half) || Math.Sign(_slope[i]) != Math.Sign(half))
                {
                    var (outer, inner) = (_slope[i], _slope[i - step]);
                    return Math.Abs(i - step - top) + ((inner - half) / (inner - outer));
                }
            }

            return null;
        }

        // Half the width at half height of a Gaussian is its standard deviation times the root of twice the logarithm of 2; the derivative's own smoothing is taken off.
        return half != 0 && Side(-1) is { } left && Side(1) is { } right
            ? Math.Sqrt(Math.Max(0, Math.Pow((left + right) / 2 * Step / Math.Sqrt(2 * Math.Log(2)), 2) - (Smoothing * Smoothing)))
            : null;
    }

    private static double[] MakeKernel()
    {
        // Correlation kernel of the Gaussian's derivative: sum of kernel x light is the smoothed slope in light a pixel.
        const double Reach = 4;
        var half = (int)Math.Ceiling(Reach * Smoothing / Step);
        var kernel = new double[(2 * half) + 1];
        for (var i = -half; i <= half; i++)
        {
            var x = i * Step;
            kernel[i + half] = x / (Smoothing * Smoothing) * Math.Exp(-x * x / (2 * Smoothing * Smoothing)) / (Math.Sqrt(Math.Tau) * Smoothing) * Step;
        }

        return kernel;
    }
}
