using System;
using System.Globalization;

namespace InscriptionLab.Measures;

/// <summary>
/// A point in a picture: X to the right, Y down, in pixels. The centre of the top-left pixel is (0, 0), so a pixel's centre has integer
/// coordinates and the picture's outer corner is (-0.5, -0.5). The default value is the centre of the top-left pixel.
/// </summary>
/// <param name="X">Column coordinate in pixels.</param>
/// <param name="Y">Row coordinate in pixels.</param>
public readonly record struct PixelPoint(double X, double Y)
{
    /// <summary>Gives the straight distance to another point of the same picture.</summary>
    public PixelLength DistanceTo(PixelPoint other) => PixelLength.FromPixels(Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y))));

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X:0.##}, {Y:0.##})");
}
