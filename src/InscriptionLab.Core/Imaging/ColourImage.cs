using System;

namespace InscriptionLab.Imaging;

/// <summary>An immutable colour picture: blue, green, red bytes for each pixel, rows from top to bottom without padding.</summary>
public sealed class ColourImage
{
    /// <summary>Bytes a pixel.</summary>
    public const int Channels = 3;

    private readonly byte[] _pixels;

    /// <summary>Takes over the pixels, which the caller must not change afterwards.</summary>
    /// <param name="width">Columns, above zero.</param>
    /// <param name="height">Rows, above zero.</param>
    /// <param name="pixels">Exactly width x height x 3 bytes, blue first.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above zero.</exception>
    /// <exception cref="ArgumentException">The number of bytes does not fit.</exception>
    public ColourImage(int width, int height, byte[] pixels)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        ArgumentNullException.ThrowIfNull(pixels);
        if (pixels.Length != (long)width * height * Channels)
        {
            throw new ArgumentException("The number of bytes must be width x height x 3.", nameof(pixels));
        }

        Width = width;
        Height = height;
        _pixels = pixels;
    }

    /// <summary>Gets the number of columns.</summary>
    public int Width { get; }

    /// <summary>Gets the number of rows.</summary>
    public int Height { get; }

    /// <summary>Gets the bytes: blue, green, red of each pixel, row after row.</summary>
    public ReadOnlySpan<byte> Pixels => _pixels;

    /// <summary>Gets the same bytes as memory, for those who must hold them in place for a while.</summary>
    public ReadOnlyMemory<byte> Memory => _pixels;
}
