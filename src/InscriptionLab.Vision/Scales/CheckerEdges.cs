using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;

namespace InscriptionLab.Vision.Scales;

/// <summary>Measures the sides of a checkerboard's squares between its inner corners. Light changes both ways in equal number, so the shift of blurred edges cancels.</summary>
internal static class CheckerEdges
{
    /// <summary>Share of a side left out at each end, where the corner rounds the edge.</summary>
    private const double EndShare = 0.15;

    /// <summary>Distance of measured places along a side, in pixels: about the reach of a phone's sharpening, so that neighbours are nearly independent.</summary>
    private const double PlaceDistance = 2.5;

    /// <summary>How far an edge is looked for, as a share of a square, and in pixels.</summary>
    private const double ReachShare = 0.25;
    private const double LargestReach = 4;

    /// <summary>Share of the step between light and dark that the slope must rise to, a pixel.</summary>
    private const double SmallestSlopeShare = 0.08;

    /// <summary>Reads the sides between neighbouring corners.</summary>
    internal static List<EdgeObservation> Read(LightPicture picture, IReadOnlyCollection<LatticeCorner> corners, PlaneHomography map, double pitch)
    {
        var places = corners.ToDictionary(c => (c.I, c.J), c => c.At);
        var found = new List<EdgeObservation>();
        foreach (var ((i, j), at) in places)
        {
            if (places.TryGetValue((i + 1, j), out var right))
            {
                Side(picture, map, false, j, i, at.DistanceTo(right).Pixels, pitch, found);
            }

            if (places.TryGetValue((i, j + 1), out var below))
            {
                Side(picture, map, true, i, j, at.DistanceTo(below).Pixels, pitch, found);
            }
        }

        return found;
    }

    private static void Side(LightPicture picture, PlaneHomography map, bool acrossX, int value, int from, double pixels, double pitch, List<EdgeObservation> found)
    {
        double Light(double offset)
        {
            var at = acrossX ? map.ToPicture(value + offset, from + 0.5) : map.ToPicture(from + 0.5, value + offset);
            return picture.At(at.X, at.Y);
        }

        const double Inside = 0.3;
        var step = ((Light(Inside) + Light(0.5)) - (Light(-Inside) + Light(-0.5))) / 2;
        var count = Math.Max(1, (int)(pixels * (1 - (2 * EndShare)) / PlaceDistance));
        for (var k = 0; k < count; k++)
        {
            var share = EndShare + ((1 - (2 * EndShare)) * (k + 0.5) / count);
            if (EdgePoint.Find(picture, map, acrossX, value, from + share, ReachShare, LargestReach, Math.Sign(step), SmallestSlopeShare * Math.Abs(step)) is { } at)
            {
                found.Add(new EdgeObservation(0, acrossX, value * pitch, Math.Sign(step), at));
            }
        }
    }
}
