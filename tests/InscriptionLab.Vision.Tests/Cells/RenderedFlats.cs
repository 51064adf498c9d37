using System;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>Plain flat things that give a scale: a bank card, a coin, a strip with two dots. Places in millimetres from the upper left corner of the space they take.</summary>
internal static class RenderedFlats
{
    internal const double CardLength = 85.60;
    internal const double CardWidth = 53.98;
    internal const double DiscMillimetres = 23.25;
    internal const double DotDistance = 50;

    /// <summary>Radius of the card's corners (ISO/IEC 7810: 2.88 to 3.48 mm).</summary>
    private const double CornerRadius = 3.18;

    /// <summary>Gives the light of the card, or null beside it: a stripe and a chip on it are print.</summary>
    internal static double? Card(double x, double y)
    {
        var (dx, dy) = (Math.Max(Math.Abs(x - (CardLength / 2)) - (CardLength / 2) + CornerRadius, 0), Math.Max(Math.Abs(y - (CardWidth / 2)) - (CardWidth / 2) + CornerRadius, 0));
        if (Math.Sqrt((dx * dx) + (dy * dy)) > CornerRadius)
        {
            return null;
        }

        return y is > 34 and < 46 ? 0.3 : x is > 9 and < 21 && y is > 16 and < 26 ? 0.55 : 0.65;
    }

    /// <summary>Gives the light of the coin, or null beside it: a raised border and a field with a figure.</summary>
    internal static double? Disc(double x, double y)
    {
        var (dx, dy) = (x - (DiscMillimetres / 2), y - (DiscMillimetres / 2));
        var radius = Math.Sqrt((dx * dx) + (dy * dy));
        return radius > DiscMillimetres / 2 ? null
            : radius > 10.4 ? 0.5
            : radius > 10.1 ? 0.36
            : 0.43 + (0.04 * Math.Sin(dx * 1.7) * Math.Cos(dy * 1.3));
    }

    /// <summary>Gives the light of the strip, or null beside it.</summary>
    internal static double? Dots(double x, double y)
    {
        if (x is < 0 or > 60 || y is < 0 or > 10)
        {
            return null;
        }

        const double DotRadius = 0.35;
        var (near, far) = (Math.Sqrt(((x - 5) * (x - 5)) + ((y - 5) * (y - 5))), Math.Sqrt(((x - 5 - DotDistance) * (x - 5 - DotDistance)) + ((y - 5) * (y - 5))));
        return Math.Min(near, far) < DotRadius ? 0.05 : 0.7;
    }
}
