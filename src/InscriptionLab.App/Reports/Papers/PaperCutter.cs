using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Cuts single letters out of the picture of a line.</summary>
internal static class PaperCutter
{
    /// <summary>Pixels added on every side, so that a stroke's end is not cut off.</summary>
    private const int Margin = 2;

    /// <summary>Gives the letter in a box of the line's picture; null where the box holds no pixel.</summary>
    internal static PaperCut? Of(GrayImage line, double left, double top, double right, double bottom)
    {
        if (!double.IsFinite(left + top + right + bottom))
        {
            return null;
        }

        var (x, y) = ((int)Math.Clamp(Math.Floor(left) - Margin, 0, line.Width), (int)Math.Clamp(Math.Floor(top) - Margin, 0, line.Height));
        var (width, height) = ((int)Math.Clamp(Math.Ceiling(right) + Margin + 1, 0, line.Width) - x, (int)Math.Clamp(Math.Ceiling(bottom) + Margin + 1, 0, line.Height) - y);
        if (width <= 0 || height <= 0)
        {
            return null;
        }

        var pixels = new byte[width * height];
        for (var row = 0; row < height; row++)
        {
            line.Pixels.Slice(((y + row) * line.Width) + x, width).CopyTo(pixels.AsSpan(row * width));
        }

        return new PaperCut(PictureEncoder.ToPng(new GrayImage(width, height, pixels)), width, height);
    }
}
