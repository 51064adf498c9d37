using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// How wide edges are, by direction. The picture is blurred once more by a known amount: the steepness of an edge of blur s falls by
/// sqrt((s2 + k2) / s2), which gives s (Zhuo and Sim, Pattern Recognition 44, 2011, 1852-1858). The strongest edges of each direction are taken, and their median.
/// </summary>
internal static class BlurMeter
{
    /// <summary>First blur against noise, and the known second one, pixels.</summary>
    private const double Calming = 0.6;
    private const double Known = 1.0;

    /// <summary>Directions in half a turn.</summary>
    private const int Directions = 8;

    /// <summary>Share of the pixels whose slopes are too small to be edges.</summary>
    private const double NoEdges = 0.8;

    /// <summary>Edges that a direction needs to be heard.</summary>
    private const int LeastEdges = 20;

    /// <summary>Variance below which widths cannot be told apart, pixels squared; keeps ratios of tiny widths near 1.</summary>
    private const double Unresolved = 0.3;

    /// <summary>Gives the standard deviations of the blur along the sharpest and the widest direction, and the latter.</summary>
    internal static (double Sharp, double Wide, Angle Direction) Measure(LetteringArea area)
    {
        using var calm = Blur(area.Gray, Calming);
        using var known = Blur(area.Gray, Math.Sqrt((Calming * Calming) + (Known * Known)));
        var before = new SlopeField(calm);
        var after = new SlopeField(known);
        var inside = Enumerable.Range(0, area.Inside.Length).Where(at => area.Inside[at] && before.IsInner(at)).ToList();
        if (inside.Count < LeastEdges)
        {
            return (0, 0, default);
        }

        var least = Quantile([.. inside.Select(at => before.Steepness(at))], NoEdges);
        var edges = new List<double>[Directions];
        for (var i = 0; i < Directions; i++)
        {
            edges[i] = [];
        }

        foreach (var at in inside.Where(at => before.Steepness(at) > least && before.IsCrest(at)))
        {
            var ratio = before.Steepness(at) / Math.Max(1e-3, after.Steepness(at));
            var variance = (Known * Known / Math.Max(1e-3, (ratio * ratio) - 1)) - (Calming * Calming);
            var direction = (int)Math.Round(before.Direction(at) / Math.PI * Directions);
            edges[((direction % Directions) + Directions) % Directions].Add(Math.Clamp(variance, 0, 100));
        }

        return Widest(edges);
    }

    private static (double Sharp, double Wide, Angle Direction) Widest(List<double>[] edges)
    {
        var medians = edges.Select(list => list.Count >= LeastEdges ? Quantile([.. list], 0.5) : double.NaN).ToArray();
        var all = Quantile([.. edges.SelectMany(list => list)], 0.5);
        var (best, ratio) = (-1, 1.0);
        for (var i = 0; i < Directions; i++)
        {
            var here = (medians[i] + Unresolved) / (medians[(i + (Directions / 2)) % Directions] + Unresolved);
            if (here > ratio)
            {
                (best, ratio) = (i, here);
            }
        }

        return best < 0
            ? (Math.Sqrt(all), Math.Sqrt(all), default)
            : (Math.Sqrt(medians[(best + (Directions / 2)) % Directions] + Unresolved), Math.Sqrt(medians[best] + Unresolved), Angle.FromRadians(best * Math.PI / Directions));
    }

    internal static NativeImage Blur(NativeImage image, double sigma) =>
        image.Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), sigma, sigma, BorderTypes.Replicate));

    internal static double Quantile(double[] values, double share)
    {
        if (values.Length == 0)
        {
            return 0;
        }

        Array.Sort(values);
        return values[(int)Math.Clamp(share * (values.Length - 1), 0, values.Length - 1)];
    }
}
