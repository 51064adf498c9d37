using System;
using System.Collections.Immutable;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Says how much of an edge runs beside burnt-out pixels: there the true step of light is not known and its middle lies farther in the light than it seems.</summary>
internal static class BurntEdges
{
    /// <summary>Grey level from which a pixel counts as burnt out.</summary>
    private const byte Burnt = 250;

    /// <summary>How far from the edge burnt pixels are looked for, in pixels: beyond the blur.</summary>
    private const int Near = 3;

    /// <summary>Gives the share of points, 0 to 1.</summary>
    internal static double Share(GrayImage image, ImmutableArray<PixelPoint> points)
    {
        var burnt = 0;
        foreach (var point in points)
        {
            var (x, y) = ((int)Math.Round(point.X), (int)Math.Round(point.Y));
            if (AnyBurnt(image, x, y))
            {
                burnt++;
            }
        }

        return points.IsEmpty ? 0 : burnt / (double)points.Length;
    }

    private static bool AnyBurnt(GrayImage image, int x, int y)
    {
        for (var row = Math.Max(0, y - Near); row <= Math.Min(image.Height - 1, y + Near); row++)
        {
            for (var column = Math.Max(0, x - Near); column <= Math.Min(image.Width - 1, x + Near); column++)
            {
                if (image[column, row] >= Burnt)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
