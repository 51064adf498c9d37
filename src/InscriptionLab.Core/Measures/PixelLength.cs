using System;
using System.Globalization;

namespace InscriptionLab.Measures;

/// <summary>A length in a picture, in pixels. The default value is zero pixels. Only an <see cref="ImageScale"/> leads to millimetres.</summary>
public readonly record struct PixelLength : IComparable<PixelLength>
{
    private PixelLength(double pixels) => Pixels = pixels;

    /// <summary>Gets the length in pixels.</summary>
    public double Pixels { get; }

    /// <summary>Makes a pixel length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static PixelLength FromPixels(double pixels) => double.IsFinite(pixels)
        ? new PixelLength(pixels)
        : throw new ArgumentOutOfRangeException(nameof(pixels), pixels, "A pixel length must be finite.");

    /// <summary>Scales a pixel length by a pure number.</summary>
    public static PixelLength operator *(PixelLength length, double factor) => FromPixels(length.Pixels * factor);

    /// <summary>Gives the ratio of two pixel lengths, a pure number.</summary>
    public static double operator /(PixelLength left, PixelLength right) => left.Pixels / right.Pixels;

    /// <summary>Compares two pixel lengths.</summary>
    public static bool operator <(PixelLength left, PixelLength right) => left.CompareTo(right) < 0;

    /// <summary>Compares two pixel lengths.</summary>
    public static bool operator >(PixelLength left, PixelLength right) => left.CompareTo(right) > 0;

    /// <summary>Compares two pixel lengths.</summary>
    public static bool operator <=(PixelLength left, PixelLength right) => left.CompareTo(right) <= 0;

    /// <summary>Compares two pixel lengths.</summary>
    public static bool operator >=(PixelLength left, PixelLength right) => left.CompareTo(right) >= 0;

    /// <inheritdoc/>
    public int CompareTo(PixelLength other) => Pixels.CompareTo(other.Pixels);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Pixels:0.##} px");
}
