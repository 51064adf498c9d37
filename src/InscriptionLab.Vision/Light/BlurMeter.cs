using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// How wide edges are, by direction. The picture is blurred once more by a known amount: the steepness of an edge of blur s falls by
/// sqrt((s2 + k2) / s2), which gives s (Zhuo and Sim, Pattern Recognition 44, 2011, 1852-1858). The strongest edges of each direction are taken, and their median.
/// </summary>
internal static class BlurMeter
{
    /// <summary>First blur against noise, and the known second one, as shares of the letters' height but not below so many pixels: edges of large letters are looked at no finer than their strokes need, or noise passes for edges.</summary>
    private const double CalmingOfLetter = 1 / 40.0;
    private const double LeastCalming = 0.6;
    private const double KnownOfLetter = 1 / 24.0;
    private const double LeastKnown = 1.0;

    /// <summary>Directions in half a turn.</summary>
    private const int Directions = 8;

    /// <summary>Share of the pixels whose slopes are too small to be edges.</summary>
    private const double NoEdges = 0.8;

    /// <summary>Widest edges told, pixels of standard deviation.</summary>
    private const double Widest = 20;

    /// <summary>Edges that a direction needs to be heard.</summary>
    private const int LeastEdges = 20;

    /// <summary>How far an edge's slope must stand above that of noise, in standard deviations (a Gaussian derivative of width s leaves noise n a slope of n / (sqrt(8 pi) s2)), and the coarsest look, in steps of the finest.</summary>
    private const double Clear = 5;
    private const int Coarsest = 4;

    /// <summary>Variance below which widths cannot be told apart, over that of the known blur; keeps ratios of tiny widths near 1.</summary>
    private const double Unresolved = 0.3;

    /// <summary>Gives the standard deviations of the blur along the sharpest and the widest direction, in pixels of the photo, and the latter. Where noise hides the edges, they are looked at more coarsely.</summary>
    internal static (double Sharp, double Wide, Angle Direction) Measure(LetteringArea area)
    {
        var noise = NoiseOf(area);
        for (var coarser = 1; ; coarser *= 2)
        {
            var calming = coarser * Math.Max(LeastCalming, area.Height * CalmingOfLetter);
            var added = coarser * Math.Max(LeastKnown, area.Height * KnownOfLetter);
            var edges = Edges(area, calming, added, Clear * noise / (Math.Sqrt(8 * Math.PI) * calming * calming));
            if (coarser < Coarsest && !Array.Exists(edges, direction => direction.Count >= LeastEdges))
            {
                continue;
            }

            if (edges.Sum(direction => direction.Count) == 0)
            {
                return (0, 0, default);
            }

            var (sharp, wide, along) = Extremes(edges, Unresolved * added * added, Unresolved * added * added / (coarser * coarser));
            return (sharp / area.Scale, wide / area.Scale, along);
        }
    }

    /// <summary>Variances of the blur at the crests of the steepest slopes, by direction.</summary>
    private static List<double>[] Edges(LetteringArea area, double calming, double added, double clear)
    {
        var slopes = area.Parts.Select(part => (Part: part, Before: SlopesAt(part, calming), After: SlopesAt(part, Math.Sqrt((calming * calming) + (added * added))))).ToList();
        var steepness = new List<double>();
        foreach (var (part, before, _) in slopes)
        {
            var inside = part.Inside;
            for (var at = 0; at < inside.Length; at++)
            {
                if (inside[at] != 0 && before.IsInner(at))
                {
                    steepness.Add(before.Steepness(at));
                }
            }
        }

        var least = Math.Max(clear, Quantile([.. steepness], NoEdges));
        var edges = Enumerable.Range(0, Directions).Select(_ => new List<double>()).ToArray();
        foreach (var (part, before, after) in slopes)
        {
            var inside = part.Inside;
            for (var at = 0; at < inside.Length; at++)
            {
                if (inside[at] != 0 && before.IsInner(at) && before.Steepness(at) > least && before.IsCrest(at))
                {
                    var ratio = before.Steepness(at) / Math.Max(1e-3, after.Steepness(at));
                    var variance = (added * added / Math.Max(1e-3, (ratio * ratio) - 1)) - (calming * calming);
                    var direction = (int)Math.Round(before.Direction(at) / Math.PI * Directions);
                    edges[((direction % Directions) + Directions) % Directions].Add(Math.Clamp(variance, 0, Widest * Widest));
                }
            }
        }

        return edges;
    }

    /// <summary>Standard deviation of the noise, grey levels: the middle size of what differs from both diagonals' neighbours (kernel of Immerkær, Computer Vision and Image Understanding 64, 1996, 300-302), whose sum of squares is 36.</summary>
    private static double NoiseOf(LetteringArea area)
    {
        const double KernelNorm = 6;
        const double MiddleOfNormal = 0.6745;
        var sizes = new List<double>();
        foreach (var part in area.Parts)
        {
            var levels = part.Gray.Mat.AsSpan<float>();
            var inside = part.Inside;
            var width = part.Width;
            for (var y = 1; y + 1 < part.Height; y += 2)
            {
                for (var x = 1; x + 1 < width; x += 2)
                {
                    var at = (y * width) + x;
                    if (inside[at] != 0)
                    {
                        var sides = levels[at - 1] + levels[at + 1] + levels[at - width] + levels[at + width];
                        var corners = levels[at - width - 1] + levels[at - width + 1] + levels[at + width - 1] + levels[at + width + 1];
                        sizes.Add(Math.Abs((4 * levels[at]) - (2 * sides) + corners));
                    }
                }
            }
        }

        return Quantile([.. sizes], 0.5) / (KernelNorm * MiddleOfNormal);
    }

    private static SlopeField SlopesAt(LetteringPart part, double sigma)
    {
        using var blurred = part.Gray.Blurred(sigma);
        return new SlopeField(blurred);
    }

    /// <summary>The sharpest and the widest of two directions square to each other. A coarse look blurs the comparison of the two, but must not make what it finds wider than a fine one would.</summary>
    private static (double Sharp, double Wide, Angle Direction) Extremes(List<double>[] edges, double unresolved, double least)
    {
        var medians = edges.Select(list => list.Count >= LeastEdges ? Quantile([.. list], 0.5) : double.NaN).ToArray();
        var all = Quantile([.. edges.SelectMany(list => list)], 0.5);
        var (best, ratio) = (-1, 1.0);
        for (var i = 0; i < Directions; i++)
        {
            var here = (medians[i] + unresolved) / (medians[(i + (Directions / 2)) % Directions] + unresolved);
            if (here > ratio)
            {
                (best, ratio) = (i, here);
            }
        }

        return best < 0
            ? (Math.Sqrt(all + least), Math.Sqrt(all + least), default)
            : (Math.Sqrt(medians[(best + (Directions / 2)) % Directions] + least), Math.Sqrt(medians[best] + least), Angle.FromRadians(best * Math.PI / Directions));
    }

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
