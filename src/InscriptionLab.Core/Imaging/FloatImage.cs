using System;

namespace InscriptionLab.Imaging;

/// <summary>An immutable picture of real numbers, rows from top to bottom without padding; the unit is the owner's.</summary>
public sealed class FloatImage
{
    private readonly float[] _values;

    /// <summary>Takes over the values, which the caller must not change afterwards.</summary>
    /// <param name="width">Columns, above zero.</param>
    /// <param name="height">Rows, above zero.</param>
    /// <param name="values">Exactly width x height values.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above zero.</exception>
    /// <exception cref="ArgumentException">The number of values does not fit.</exception>
    public FloatImage(int width, int height, float[] values)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        ArgumentNullException.ThrowIfNull(values);
        if (values.Length != (long)width * height)
        {
            throw new ArgumentException("The number of values must be width x height.", nameof(values));
        }

        Width = width;
        Height = height;
        _values = values;
    }

    /// <summary>Gets the number of columns.</summary>
    public int Width { get; }

    /// <summary>Gets the number of rows.</summary>
    public int Height { get; }

    /// <summary>Gets the values, row after row.</summary>
    public ReadOnlySpan<float> Values => _values;

    /// <summary>Gets the value at a column and row.</summary>
    public float this[int x, int y] => _values[(y * Width) + x];
}
