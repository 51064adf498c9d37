using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A straight line through points of which some are wrong: the pair of points with the most support, then weighted least squares through its supporters.</summary>
/// <param name="Offset">Across at along = 0.</param>
/// <param name="Slope">Across per along.</param>
/// <param name="Inliers">Number of points on the line.</param>
internal sealed record RobustLine(double Offset, double Slope, int Inliers)
{
    /// <summary>Fits a line to at least two points.</summary>
    internal static RobustLine Fit(IReadOnlyList<(double Along, double Across, double Weight)> points, double tolerance)
    {
        var best = new RobustLine(points.Average(point => point.Across), 0, 0);
        var bestSupport = -1.0;
        var span = points[^1].Along - points[0].Along;
        for (var i = 0; i < points.Count; i++)
        {
            for (var j = i + 1; j < points.Count; j++)
            {
                if (points[j].Along - points[i].Along < span / 4)
                {
                    continue;
                }

                var slope = (points[j].Across - points[i].Across) / (points[j].Along - points[i].Along);
                var offset = points[i].Across - (slope * points[i].Along);
                var support = points.Sum(point => Support(point.Across - offset - (slope * point.Along), tolerance));
                if (support > bestSupport)
                {
                    bestSupport = support;
                    best = new RobustLine(offset, slope, 0);
                }
            }
        }

        for (var round = 0; round < 3; round++)
        {
            best = LeastSquares(points, best, tolerance);
        }

        return best;
    }

    private static double Support(double distance, double tolerance) => Math.Max(0, 1 - (distance * distance / (tolerance * tolerance)));

    private static RobustLine LeastSquares(IReadOnlyList<(double Along, double Across, double Weight)> points, RobustLine line, double tolerance)
    {
        double n = 0;
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        var inliers = 0;
        foreach (var (along, across, weight) in points)
        {
            var distance = across - line.Offset - (line.Slope * along);
            if (Math.Abs(distance) < tolerance)
            {
                n += weight;
                x += weight * along;
                y += weight * across;
                xx += weight * along * along;
                xy += weight * along * across;
                inliers++;
            }
        }

        var determinant = (n * xx) - (x * x);
        if (inliers < 2 || !(determinant > 0))
        {
            return line with { Inliers = inliers };
        }

        var slope = ((n * xy) - (x * y)) / determinant;
        return new RobustLine((y - (slope * x)) / n, slope, inliers);
    }
}
