using System;
using System.Globalization;

namespace InscriptionLab.Measures;

/// <summary>A length on the object, stored in millimetres. The default value is zero millimetres.</summary>
/// <remarks>One inch is exactly 25.4 mm (international yard and pound agreement, 1959); one Paris ligne is 2.2558291 mm (1 m = 443.296 lignes, French law of 1799).</remarks>
public readonly record struct Length : IComparable<Length>
{
    private const double MillimetresPerInch = 25.4;
    private const double MillimetresPerParisLigne = 1000.0 / 443.296;

    private Length(double millimetres) => Millimetres = millimetres;

    /// <summary>Gets the length in millimetres.</summary>
    public double Millimetres { get; }

    /// <summary>Gets the length in international inches.</summary>
    public double Inches => Millimetres / MillimetresPerInch;

    /// <summary>Gets the length in Paris lignes.</summary>
    public double ParisLignes => Millimetres / MillimetresPerParisLigne;

    /// <summary>Makes a length from millimetres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Length FromMillimetres(double millimetres) => double.IsFinite(millimetres)
        ? new Length(millimetres)
        : throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A length must be finite.");

    /// <summary>Makes a length from international inches.</summary>
    public static Length FromInches(double inches) => FromMillimetres(inches * MillimetresPerInch);

    /// <summary>Makes a length from Paris lignes.</summary>
    public static Length FromParisLignes(double lignes) => FromMillimetres(lignes * MillimetresPerParisLigne);

    /// <summary>Adds two lengths.</summary>
    public static Length operator +(Length left, Length right) => new(left.Millimetres + right.Millimetres);

    /// <summary>Subtracts one length from another.</summary>
    public static Length operator -(Length left, Length right) => new(left.Millimetres - right.Millimetres);

    /// <summary>Scales a length by a pure number.</summary>
    public static Length operator *(Length length, double factor) => FromMillimetres(length.Millimetres * factor);

    /// <summary>Gives the ratio of two lengths, a pure number.</summary>
    public static double operator /(Length left, Length right) => left.Millimetres / right.Millimetres;

    /// <summary>Compares two lengths.</summary>
    public static bool operator <(Length left, Length right) => left.CompareTo(right) < 0;

    /// <summary>Compares two lengths.</summary>
    public static bool operator >(Length left, Length right) => left.CompareTo(right) > 0;

    /// <summary>Compares two lengths.</summary>
    public static bool operator <=(Length left, Length right) => left.CompareTo(right) <= 0;

    /// <summary>Compares two lengths.</summary>
    public static bool operator >=(Length left, Length right) => left.CompareTo(right) >= 0;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Millimetres.CompareTo(other.Millimetres);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millimetres:0.###} mm");
}
