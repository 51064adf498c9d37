using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Pictures;

/// <summary>Cuts pictures to pieces and makes small ones of them, for a viewer that only loads what it shows.</summary>
public static class PictureCutter
{
    /// <summary>Cuts a rectangle out, exactly; what lies outside the picture is left out.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="left">First column, zero or more and inside the picture.</param>
    /// <param name="top">First row, zero or more and inside the picture.</param>
    /// <param name="width">Columns, above zero.</param>
    /// <param name="height">Rows, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rectangle does not begin inside the picture or has no extent.</exception>
    public static ColourImage Cut(ColourImage picture, int left, int top, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentOutOfRangeException.ThrowIfNegative(left);
        ArgumentOutOfRangeException.ThrowIfNegative(top);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(left, picture.Width);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(top, picture.Height);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        var columns = Math.Min(width, picture.Width - left);
        var rows = Math.Min(height, picture.Height - top);
        var pixels = new byte[columns * rows * ColourImage.Channels];
        var run = columns * ColourImage.Channels;
        for (var row = 0; row < rows; row++)
        {
            var from = (((top + row) * picture.Width) + left) * ColourImage.Channels;
            picture.Pixels.Slice(from, run).CopyTo(pixels.AsSpan(row * run, run));
        }

        return new ColourImage(columns, rows, pixels);
    }

    /// <summary>Gives the picture at half size, each pixel the mean of those it covers; odd sides are rounded up.</summary>
    public static ColourImage Halve(ColourImage picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var native = NativeImage.View(picture);
        var size = new Size((picture.Width + 1) / 2, (picture.Height + 1) / 2);
        using var half = native.Apply((from, to) => Cv2.Resize(from, to, size, 0, 0, InterpolationFlags.Area));
        return half.ToColour();
    }
}
