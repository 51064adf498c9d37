using System;
using System.Globalization;

namespace InscriptionLab.Measures;

/// <summary>An angle, stored in radians. In a picture it runs from the X axis toward the Y axis. The default value is zero.</summary>
public readonly record struct Angle
{
    private Angle(double radians) => Radians = radians;

    /// <summary>Gets the angle in radians.</summary>
    public double Radians { get; }

    /// <summary>Gets the angle in degrees.</summary>
    public double Degrees => Radians * 180 / Math.PI;

    /// <summary>Makes an angle from radians.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Angle FromRadians(double radians) => double.IsFinite(radians)
        ? new Angle(radians)
        : throw new ArgumentOutOfRangeException(nameof(radians), radians, "An angle must be finite.");

    /// <summary>Makes an angle from degrees.</summary>
    public static Angle FromDegrees(double degrees) => FromRadians(degrees * Math.PI / 180);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Degrees:0.##}°");
}
