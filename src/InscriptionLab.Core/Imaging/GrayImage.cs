using System;

namespace InscriptionLab.Imaging;

/// <summary>An immutable grey picture, 8 bits a pixel, rows from top to bottom without padding.</summary>
public sealed class GrayImage
{
    private readonly byte[] _pixels;

    /// <summary>Takes over the pixels, which the caller must not change afterwards.</summary>
    /// <param name="width">Columns, above zero.</param>
    /// <param name="height">Rows, above zero.</param>
    /// <param name="pixels">Exactly width x height bytes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above zero.</exception>
    /// <exception cref="ArgumentException">The number of bytes does not fit.</exception>
    public GrayImage(int width, int height, byte[] pixels)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        ArgumentNullException.ThrowIfNull(pixels);
        if (pixels.Length != (long)width * height)
        {
            throw new ArgumentException("The number of bytes must be width x height.", nameof(pixels));
        }

        Width = width;
        Height = height;
        _pixels = pixels;
    }

    /// <summary>Gets the number of columns.</summary>
    public int Width { get; }

    /// <summary>Gets the number of rows.</summary>
    public int Height { get; }

    /// <summary>Gets the pixels, row after row.</summary>
    public ReadOnlySpan<byte> Pixels => _pixels;

    /// <summary>Gets the same bytes as memory, for those who must hold them in place for a while.</summary>
    public ReadOnlyMemory<byte> Memory => _pixels;

    /// <summary>Gets the pixel at a column and row.</summary>
    public byte this[int x, int y] => _pixels[(y * Width) + x];
}
