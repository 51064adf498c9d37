using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Assess.Scores;

/// <summary>Areas of convex patches, cut against each other by the method of Sutherland and Hodgman (CACM 17(1), 1974).</summary>
internal static class ConvexPatch
{
    /// <summary>Gives the area that two convex patches share over the area that they cover together: 1 for the same patch, 0 for none shared.</summary>
    /// <param name="one">Corners in order, either way round.</param>
    /// <param name="other">Corners in order, either way round.</param>
    internal static double Overlap(IReadOnlyList<(double X, double Y)> one, IReadOnlyList<(double X, double Y)> other)
    {
        var (first, second) = (Forward(one), Forward(other));
        var shared = Area(Cut(first, second));
        var together = Area(first) + Area(second) - shared;
        return together > 0 ? shared / together : 0;
    }

    private static List<(double X, double Y)> Forward(IReadOnlyList<(double X, double Y)> corners) =>
        SignedArea(corners) >= 0 ? [.. corners] : [.. corners.Reverse()];

    private static List<(double X, double Y)> Cut(List<(double X, double Y)> patch, List<(double X, double Y)> by)
    {
        for (var e = 0; e < by.Count && patch.Count > 0; e++)
        {
            var (from, to) = (by[e], by[(e + 1) % by.Count]);
            double Side((double X, double Y) p) => ((to.X - from.X) * (p.Y - from.Y)) - ((to.Y - from.Y) * (p.X - from.X));
            var kept = new List<(double X, double Y)>();
            for (var i = 0; i < patch.Count; i++)
            {
                var (here, next) = (patch[i], patch[(i + 1) % patch.Count]);
                var (a, b) = (Side(here), Side(next));
                if (a >= 0)
                {
                    kept.Add(here);
                }

                if (a * b < 0)
                {
                    var share = a / (a - b);
                    kept.Add((here.X + (share * (next.X - here.X)), here.Y + (share * (next.Y - here.Y))));
                }
            }

            patch = kept;
        }

        return patch;
    }

    private static double Area(IReadOnlyList<(double X, double Y)> corners) => Math.Abs(SignedArea(corners));

    private static double SignedArea(IReadOnlyList<(double X, double Y)> corners)
    {
        var sum = 0.0;
        for (var i = 0; i < corners.Count; i++)
        {
            var (here, next) = (corners[i], corners[(i + 1) % corners.Count]);
            sum += (here.X * next.Y) - (next.X * here.Y);
        }

        return sum / 2;
    }
}
