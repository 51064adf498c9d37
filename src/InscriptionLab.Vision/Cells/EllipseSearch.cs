using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Tries ellipses on the edge pixels round a centre: five pixels from all round make one, and the share of its outline that lies on edges decides.</summary>
internal static class EllipseSearch
{
    /// <summary>Directions into which an outline is divided to count how much of it lies on edges.</summary>
    private const int Sectors = 72;

    /// <summary>Least share of an outline.</summary>
    private const double SmallestCoverage = 0.3;

    /// <summary>Least ratio of the axes: a circle tilted by 37 degrees.</summary>
    private const double SmallestRatio = 0.8;

    /// <summary>Least cosine between gradient and radius: an ellipse of that ratio has its normals within 13 degrees of its radii.</summary>
    private const double SmallestAlignment = 0.94;

    /// <summary>How far radii of one ellipse may differ from their mean, as a share.</summary>
    private const double RadiusSpread = 0.1;

    /// <summary>Farthest an edge pixel may lie from its ellipse, in pixels.</summary>
    private const double Tolerance = 1.3;

    /// <summary>Distance of neighbouring radii tried, in pixels.</summary>
    private const int RadiusStep = 4;

    /// <summary>Radii tried round one centre, the best supported.</summary>
    private const int MostRadii = 10;

    /// <summary>Ellipses tried for each radius.</summary>
    private const int Trials = 90;

    /// <summary>Seed of the random choice of pixels: the same photo gives the same result.</summary>
    private const int Seed = 20250;

    /// <summary>Finds ellipses round a centre.</summary>
    internal static List<EllipseCandidate> Round(List<EdgePixel> pixels, int x, int y, int smallest, int largest)
    {
        var near = new List<(EdgePixel Pixel, double Radius, int Sector)>();
        foreach (var pixel in pixels)
        {
            var (dx, dy) = ((double)pixel.X - x, (double)pixel.Y - y);
            var radius = Math.Sqrt((dx * dx) + (dy * dy));
            if (radius >= smallest * (1 - RadiusSpread)
                && radius <= largest * (1 + RadiusSpread)
                && Math.Abs((dx * pixel.GradientX) + (dy * pixel.GradientY)) >= SmallestAlignment * radius)
            {
                near.Add((pixel, radius, SectorOf(dx, dy)));
            }
        }

        var random = new Random(Seed);
        return
        [
            .. Radii(near, smallest, largest)
                .Select(r => Best(near.Where(n => Math.Abs(n.Radius - r) <= RadiusSpread * r).ToArray(), r, random))
                .OfType<EllipseCandidate>(),
        ];
    }

    /// <summary>Says whether two ellipses are the same within the search's own accuracy.</summary>
    internal static bool Same(FittedEllipse one, FittedEllipse other)
    {
        const double Near = 2.5;
        return Math.Abs(one.CentreX - other.CentreX) < Near && Math.Abs(one.CentreY - other.CentreY) < Near
            && Math.Abs(one.SemiMajor - other.SemiMajor) < Near && Math.Abs(one.SemiMinor - other.SemiMinor) < Near;
    }

    private static int SectorOf(double dx, double dy)
    {
        var sector = (int)Math.Floor(((Math.Atan2(dy, dx) / Math.Tau) + 0.5) * Sectors);
        return Math.Clamp(sector, 0, Sectors - 1);
    }

    private static IEnumerable<int> Radii(List<(EdgePixel Pixel, double Radius, int Sector)> near, int smallest, int largest)
    {
        var support = new List<(int Radius, int Count)>();
        for (var r = smallest; r <= largest; r += RadiusStep)
        {
            var spread = Math.Max(2.0, 0.03 * r);
            support.Add((r, Near(near, r, spread)));
        }

        return support.Where((s, i) => (i == 0 || s.Count >= support[i - 1].Count) && (i == support.Count - 1 || s.Count >= support[i + 1].Count))
            .OrderByDescending(s => s.Count)
            .Take(MostRadii)
            .Select(s => s.Radius);
    }

    private static EllipseCandidate? Best((EdgePixel Pixel, double Radius, int Sector)[] near, int radius, Random random)
    {
        const int Points = 5;
        var bySector = near.GroupBy(n => n.Sector).OrderBy(g => g.Key).Select(g => g.ToArray()).ToArray();
        if (bySector.Length < SmallestCoverage * Sectors)
        {
            return null;
        }

        FittedEllipse? best = null;
        var bestCount = 0;
        var sample = new PixelPoint[Points];
        for (var trial = 0; trial < Trials; trial++)
        {
            // One pixel from each fifth of the directions present.
            for (var i = 0; i < Points; i++)
            {
                var from = i * bySector.Length / Points;
                var to = (i + 1) * bySector.Length / Points;
#pragma warning disable CA5394 // A choice of pixels is no secret, and must repeat.
                var group = bySector[from + random.Next(Math.Max(1, to - from))];
                var pixel = group[random.Next(group.Length)].Pixel;
#pragma warning restore CA5394
                sample[i] = new PixelPoint(pixel.X, pixel.Y);
            }

            if (EllipseFit.Direct(sample) is { } ellipse && Plausible(ellipse, radius))
            {
                var count = Covered(near, ellipse);
                if (count > bestCount)
                {
                    (best, bestCount) = (ellipse, count);
                }
            }
        }

        if (best is null || bestCount < SmallestCoverage * Sectors)
        {
            return null;
        }

        var outline = new Outline(best);
        var inliers = near.Where(n => outline.Holds(n.Pixel)).ToArray();
        var refined = EllipseFit.Geometric(inliers.Select(n => new PixelPoint(n.Pixel.X, n.Pixel.Y)).ToArray(), best);
        if (!Plausible(refined, radius))
        {
            return null;
        }

        var coverage = Covered(near, refined) / (double)Sectors;
        return coverage >= SmallestCoverage ? new EllipseCandidate(refined, coverage) : null;
    }

    private static bool Plausible(FittedEllipse ellipse, int radius)
    {
        var mean = Math.Sqrt(ellipse.SemiMajor * ellipse.SemiMinor);
        return ellipse.SemiMinor >= SmallestRatio * ellipse.SemiMajor && Math.Abs(mean - radius) <= 2 * RadiusSpread * radius;
    }

    /// <summary>Counts the directions in which a pixel lies about as far out as asked.</summary>
    private static int Near(List<(EdgePixel Pixel, double Radius, int Sector)> near, int radius, double spread)
    {
        Span<bool> seen = stackalloc bool[Sectors];
        foreach (var (_, own, sector) in near)
        {
            seen[sector] |= Math.Abs(own - radius) <= spread;
        }

        return seen.Count(true);
    }

    /// <summary>Counts the directions in which a pixel lies on the ellipse.</summary>
    private static int Covered((EdgePixel Pixel, double Radius, int Sector)[] near, FittedEllipse ellipse)
    {
        var outline = new Outline(ellipse);
        Span<bool> seen = stackalloc bool[Sectors];
        foreach (var (pixel, _, sector) in near)
        {
            seen[sector] = seen[sector] || outline.Holds(pixel);
        }

        return seen.Count(true);
    }

    /// <summary>An ellipse ready to be asked about many pixels.</summary>
    private readonly struct Outline
    {
        private readonly FittedEllipse _ellipse;
        private readonly double _sin;
        private readonly double _cos;

        internal Outline(FittedEllipse ellipse)
        {
            _ellipse = ellipse;
            (_sin, _cos) = Math.SinCos(ellipse.Rotation);
        }

        /// <summary>Says whether a pixel lies on it.</summary>
        internal bool Holds(EdgePixel pixel)
        {
            var (dx, dy) = (pixel.X - _ellipse.CentreX, pixel.Y - _ellipse.CentreY);
            var u = ((dx * _cos) + (dy * _sin)) / _ellipse.SemiMajor;
            var v = ((dy * _cos) - (dx * _sin)) / _ellipse.SemiMinor;
            var rho = Math.Sqrt((u * u) + (v * v));
            return Math.Abs(rho - 1) * Math.Sqrt((dx * dx) + (dy * dy)) <= Tolerance * rho;
        }
    }
}
