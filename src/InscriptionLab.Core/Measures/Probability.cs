using System;
using System.Globalization;

namespace InscriptionLab.Measures;

/// <summary>A calibrated probability in [0, 1]. The default value is zero.</summary>
public readonly record struct Probability : IComparable<Probability>
{
    private Probability(double value) => Value = value;

    /// <summary>Gets certainty.</summary>
    public static Probability One { get; } = new(1);

    /// <summary>Gets impossibility.</summary>
    public static Probability Zero { get; }

    /// <summary>Gets the value, between 0 and 1.</summary>
    public double Value { get; }

    /// <summary>Makes a probability; rounding dust up to 1e-6 outside [0, 1] is cut off.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a number or lies outside [0, 1].</exception>
    public static Probability From(double value)
    {
        const double Dust = 1e-6;
        if (!(value >= -Dust && value <= 1 + Dust))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A probability lies between 0 and 1.");
        }

        return new Probability(Math.Clamp(value, 0, 1));
    }

    /// <summary>Compares two probabilities.</summary>
    public static bool operator <(Probability left, Probability right) => left.CompareTo(right) < 0;

    /// <summary>Compares two probabilities.</summary>
    public static bool operator >(Probability left, Probability right) => left.CompareTo(right) > 0;

    /// <summary>Compares two probabilities.</summary>
    public static bool operator <=(Probability left, Probability right) => left.CompareTo(right) <= 0;

    /// <summary>Compares two probabilities.</summary>
    public static bool operator >=(Probability left, Probability right) => left.CompareTo(right) >= 0;

    /// <inheritdoc/>
    public int CompareTo(Probability other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.###}");
}
