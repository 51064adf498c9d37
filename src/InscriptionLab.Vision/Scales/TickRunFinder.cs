using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Looks along lines beside a straight edge for a row of ticks: dips of the light at even distances, which may grow or shrink slowly with perspective.</summary>
internal static class TickRunFinder
{
    /// <summary>Fewest ticks of a row that is believed.</summary>
    internal const int FewestTicks = 15;

    /// <summary>Distance of samples along the line, in pixels.</summary>
    private const double Step = 0.5;

    /// <summary>Rows of pixels averaged to each side of the line.</summary>
    private const int HalfRows = 1;

    /// <summary>Least depth of a dip, in linear light.</summary>
    private const double SmallestDepth = 0.01;

    /// <summary>Least depth of a dip as a share of a deep one (the 80th of 100 in order).</summary>
    private const double SmallestDepthShare = 0.3;
    private const double DeepQuantile = 0.8;

    /// <summary>How far a distance of ticks may differ from the one before, as a share.</summary>
    private const double Unevenness = 0.18;

    /// <summary>How quickly the expected distance follows the seen one.</summary>
    private const double Following = 0.3;

    /// <summary>Least and greatest distance of ticks in pixels.</summary>
    private const double SmallestPeriod = 3.5;
    private const double LargestPeriod = 120;

    /// <summary>Finds the longest row of ticks on one line.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="origin">A point of the line.</param>
    /// <param name="directionX">X of its unit direction.</param>
    /// <param name="directionY">Y of its unit direction.</param>
    /// <param name="from">Where to begin, in pixels along the line.</param>
    /// <param name="to">Where to end.</param>
    internal static TickRun? Find(LightPicture picture, PixelPoint origin, double directionX, double directionY, double from, double to)
    {
        var light = Sample(picture, origin, directionX, directionY, from, to);
        TickRun? best = null;
        foreach (var sign in new[] { 1, -1 })
        {
            var dips = Dips(light, sign, from);
            if (LongestRun(dips) is { } places && (best is null || places.Length > best.Places.Length))
            {
                best = new TickRun(origin, directionX, directionY, sign, places);
            }
        }

        return best;
    }

    private static double[] Sample(LightPicture picture, PixelPoint origin, double dx, double dy, double from, double to)
    {
        var count = Math.Max(0, (int)((to - from) / Step));
        var light = new double[count];
        for (var i = 0; i < count; i++)
        {
            var along = from + (i * Step);
            var sum = 0.0;
            for (var row = -HalfRows; row <= HalfRows; row++)
            {
                var (x, y) = (origin.X + (along * dx) - (row * dy), origin.Y + (along * dy) + (row * dx));
                sum += picture.Holds(x, y, 1) ? picture.At(x, y) : 0;
            }

            light[i] = sum / ((2 * HalfRows) + 1);
        }

        return Smooth(light);
    }

    private static double[] Smooth(double[] light)
    {
        var smooth = new double[light.Length];
        for (var i = 0; i < light.Length; i++)
        {
            var (l, r) = (light[Math.Max(0, i - 1)], light[Math.Min(light.Length - 1, i + 1)]);
            smooth[i] = (l + (2 * light[i]) + r) / 4;
        }

        return smooth;
    }

    private static List<double> Dips(double[] light, int sign, double from)
    {
        var turning = new List<(int Index, bool Low)>();
        for (var i = 1; i < light.Length - 1; i++)
        {
            var (a, b, c) = (sign * light[i - 1], sign * light[i], sign * light[i + 1]);
            if ((b < a && b <= c) || (b > a && b >= c))
            {
                turning.Add((i, b < a));
            }
        }

        var dips = new List<(double Place, double Depth)>();
        for (var t = 1; t < turning.Count - 1; t++)
        {
            if (turning[t].Low && !turning[t - 1].Low && !turning[t + 1].Low)
            {
                var at = turning[t].Index;
                var depth = Math.Min(sign * light[turning[t - 1].Index], sign * light[turning[t + 1].Index]) - (sign * light[at]);
                var (l, m, r) = (sign * light[at - 1], sign * light[at], sign * light[at + 1]);
                var curvature = l - (2 * m) + r;
                var shift = curvature > 0 ? 0.5 * (l - r) / curvature : 0;
                dips.Add((from + ((at + shift) * Step), depth));
            }
        }

        if (dips.Count == 0)
        {
            return [];
        }

        var depths = dips.Select(d => d.Depth).Order().ToArray();
        var limit = Math.Max(SmallestDepth, SmallestDepthShare * depths[(int)(DeepQuantile * (depths.Length - 1))]);
        return [.. dips.Where(d => d.Depth >= limit).Select(d => d.Place)];
    }

    private static ImmutableArray<(int Number, double Along)>? LongestRun(List<double> dips)
    {
        List<(int Number, double Along)> best = [];
        var start = 0;
        while (start < dips.Count - 1)
        {
            var run = RunFrom(dips, start);
            if (run.Count > best.Count)
            {
                best = run;
            }

            start += Math.Max(1, run.Count - 1);
        }

        return best.Count >= FewestTicks ? [.. best] : null;
    }

    private static List<(int Number, double Along)> RunFrom(List<double> dips, int start)
    {
        var run = new List<(int Number, double Along)> { (0, dips[start]) };
        var period = dips[start + 1] - dips[start];
        if (period is < SmallestPeriod or > LargestPeriod)
        {
            return run;
        }

        var number = 0;
        var last = dips[start];
        for (var i = start + 1; i < dips.Count; i++)
        {
            var distance = dips[i] - last;
            var steps = Math.Round(distance / period);
            if (steps < 1)
            {
                // A scratch between two ticks is passed over.
                continue;
            }

            if (steps > 2 || Math.Abs(distance - (steps * period)) > Unevenness * period)
            {
                if (distance > 2.5 * period)
                {
                    break;
                }

                continue;
            }

            number += (int)steps;
            run.Add((number, dips[i]));
            period += Following * ((distance / steps) - period);
            last = dips[i];
        }

        return run;
    }
}
