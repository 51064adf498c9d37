using System;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds where an edge of a flat pattern crosses a short line square to it.</summary>
internal static class EdgePoint
{
    /// <summary>Finds the edge nearest to where the map shows it.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="map">Leads from the pattern's plane to the picture, roughly.</param>
    /// <param name="acrossX">True where the edge lies at a known X, false where at a known Y.</param>
    /// <param name="value">The known coordinate.</param>
    /// <param name="other">The other coordinate.</param>
    /// <param name="reachShare">How far to look, in units of the plane.</param>
    /// <param name="largestReach">How far to look at most, in pixels.</param>
    /// <param name="polarity">+1 where light grows with the known coordinate, -1 where it falls.</param>
    /// <param name="smallestSlope">Least slope, in light a pixel.</param>
    internal static PixelPoint? Find(LightPicture picture, PlaneHomography map, bool acrossX, double value, double other, double reachShare, double largestReach, int polarity, double smallestSlope)
    {
        const double Step = 0.05;
        var (x, y) = acrossX ? (value, other) : (other, value);
        var at = map.ToPicture(x, y);
        var (before, after) = acrossX
            ? (map.ToPicture(x, y - Step), map.ToPicture(x, y + Step))
            : (map.ToPicture(x - Step, y), map.ToPicture(x + Step, y));
        var ahead = acrossX ? map.ToPicture(x + Step, y) : map.ToPicture(x, y + Step);
        var (tx, ty) = (after.X - before.X, after.Y - before.Y);
        var length = Math.Sqrt((tx * tx) + (ty * ty));
        if (!(length > 0))
        {
            return null;
        }

        var (nx, ny) = (ty / length, -tx / length);
        var towards = ((ahead.X - at.X) * nx) + ((ahead.Y - at.Y) * ny);
        if (towards < 0)
        {
            (nx, ny, towards) = (-nx, -ny, -towards);
        }

        var reach = Math.Min(largestReach, reachShare * towards / Step);
        if (!picture.Holds(at.X, at.Y, reach + EdgeProfile.Smoothing))
        {
            return null;
        }

        (double Place, double Slope)? best = null;
        foreach (var (place, slope) in EdgeProfile.Across(picture, at, nx, ny, reach, 1).Extrema())
        {
            if (slope * polarity >= smallestSlope && (best is null || Math.Abs(slope) > Math.Abs(best.Value.Slope)))
            {
                best = (place, slope);
            }
        }

        return best is { } edge ? new PixelPoint(at.X + (edge.Place * nx), at.Y + (edge.Place * ny)) : null;
    }
}
