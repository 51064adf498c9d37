using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Relief;

/// <summary>What the light on bare metal tells of a lamp: a tube's normals are known, so its shading round the arc points to the lamp's angle, and where it brightens along the tube the lamp is near.</summary>
internal static class GroundShading
{
    /// <summary>Rows farther than this from the lettering are left out: near the outlines metal mirrors its surroundings.</summary>
    private const double Reach = 40 * Math.PI / 180;

    private const double Step = Math.PI / 360;

    private const double LargestAngle = 88 * Math.PI / 180;

    /// <summary>Share of the light that comes from everywhere, as tried.</summary>
    private static readonly double[] Everywhere = [0, 0.03, 0.08, 0.16, 0.3];

    /// <summary>Darkest rows that count, as a share of the brightest.</summary>
    private const double Dark = 0.04;

    /// <summary>Gives the angle round the axis at which a matt tube would have to be lit to be shaded like this one (least squares of the logarithms).</summary>
    internal static Angle Around(FlatLight photo, CylinderStripMap map, Angle focus)
    {
        var rows = Enumerable.Range(0, photo.Height).Select(row => (Around: map.ToSurface(new PixelPoint(0, row)).Around.Radians, Level: Middle(photo, row)))
            .Where(row => Math.Abs(row.Around - focus.Radians) <= Reach).ToList();
        var most = rows.Count == 0 ? 0 : rows.Max(row => row.Level);
        rows = [.. rows.Where(row => row.Level > Dark * most)];
        var (best, least) = (0.0, double.PositiveInfinity);
        if (rows.Count < 3)
        {
            return default;
        }

        for (var angle = -LargestAngle; angle <= LargestAngle; angle += Step)
        {
            foreach (var ambient in Everywhere)
            {
                var offsets = rows.Select(row => Math.Log(row.Level) - Math.Log(ambient + ((1 - ambient) * Math.Max(0.01, Math.Cos(angle - row.Around))))).ToList();
                var mean = offsets.Average();
                var error = offsets.Sum(offset => (offset - mean) * (offset - mean));
                if (error < least)
                {
                    (best, least) = (angle, error);
                }
            }
        }

        return Angle.FromRadians(best);
    }

    /// <summary>Gives how much faster than in the other photos the light grows along the tube: change of the logarithm of the level for a radius.</summary>
    internal static double[] Along(IReadOnlyList<FlatLight> photos, CylinderStripMap map, Angle focus)
    {
        var (width, height) = (photos[0].Width, photos[0].Height);
        var rows = Enumerable.Range(0, height).Where(row => Math.Abs(map.ToSurface(new PixelPoint(0, row)).Around.Radians - focus.Radians) <= Reach / 2).Where((_, index) => index % 4 == 0).ToList();
        var slopes = photos.Select(photo =>
        {
            var (xx, xy) = (0.0, 0.0);
            foreach (var row in rows)
            {
                for (var column = 0; column < width; column += 8)
                {
                    var x = (column - ((width - 1) / 2.0)) / map.PixelsPerRadius;
                    var level = Math.Log(Math.Max(1e-4, photo.Ground[(row * width) + column]));
                    (xx, xy) = (xx + (x * x), xy + (x * level));
                }
            }

            return xx > 0 ? xy / xx : 0;
        }).ToArray();
        var mean = slopes.Average();
        return Array.ConvertAll(slopes, slope => slope - mean);
    }

    private static double Middle(FlatLight photo, int row)
    {
        var levels = photo.Ground.AsSpan(row * photo.Width, photo.Width).ToArray();
        Array.Sort(levels);
        return Math.Max(1e-4, levels[levels.Length / 2]);
    }
}
