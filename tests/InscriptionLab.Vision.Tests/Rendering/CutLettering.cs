using System;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>
/// Lettering cut into a tube: strokes of the drawing library's vector fonts as V-shaped grooves, lines one below the other, with wear that takes depth away in patches and stains of the
/// metal. Heights are in millimetres on a grid, the middle of the grid at axial 0, angle 0.
/// </summary>
internal sealed class CutLettering
{
    private const double PixelsPerMillimetre = 24;

    private readonly float[] _height;
    private readonly float[] _stain;
    private readonly int _width;
    private readonly int _rows;

    private CutLettering(float[] height, float[] stain, int width, int rows) => (_height, _stain, _width, _rows) = (height, stain, width, rows);

    /// <summary>Cuts lines.</summary>
    internal static CutLettering Of(string[] lines, HersheyFonts font, double capHeight, double depth, double wear, int seed)
    {
        var thick = Math.Max(1, (int)(capHeight * PixelsPerMillimetre / 9));
        var scale = Cv2.GetFontScaleFromHeight(font, (int)(capHeight * PixelsPerMillimetre), thick);
        var (widest, step, margin) = (0, (int)(2.2 * capHeight * PixelsPerMillimetre), (int)(3 * PixelsPerMillimetre));
        foreach (var line in lines)
        {
            widest = Math.Max(widest, Cv2.GetTextSize(line, font, scale, thick, out _).Width);
        }

        var (width, rows) = (widest + (2 * margin), (lines.Length * step) + (2 * margin));
        using var mask = NativeImage.Empty(rows, width, MatType.CV_8UC1);
        mask.Mat.SetTo(new Scalar(0));
        for (var i = 0; i < lines.Length; i++)
        {
            var size = Cv2.GetTextSize(lines[i], font, scale, thick, out _);
            Cv2.PutText(mask.Mat, lines[i], new Point((width - size.Width) / 2, margin + (i * step) + ((step + size.Height) / 2)), font, scale, new Scalar(255), thick, LineTypes.AntiAlias);
        }

        return Cut(mask, depth, wear, seed);
    }

    /// <summary>Gives slopes along axis and arc, and how bright the metal is, at a place in millimetres.</summary>
    internal (double Axial, double Arc, double Stain) At(double axial, double arc)
    {
        var (x, y) = ((axial * PixelsPerMillimetre) + (_width / 2.0), (arc * PixelsPerMillimetre) + (_rows / 2.0));
        if (x < 2 || y < 2 || x >= _width - 3 || y >= _rows - 3)
        {
            return (0, 0, 1);
        }

        return (
            (Value(_height, x + 1, y) - Value(_height, x - 1, y)) * PixelsPerMillimetre / 2,
            (Value(_height, x, y + 1) - Value(_height, x, y - 1)) * PixelsPerMillimetre / 2,
            Value(_stain, x, y));
    }

    private static CutLettering Cut(NativeImage mask, double depth, double wear, int seed)
    {
        // A V of 45 degrees down to the depth, its lips a little rounded.
        using var cut = mask.Apply((from, to) => Cv2.Threshold(from, to, 127, 255, ThresholdTypes.Binary));
        using var distance = cut.Apply((from, to) => Cv2.DistanceTransform(from, to, DistanceTypes.L2, DistanceTransformMasks.Mask5));
        using var deep = distance.Apply((from, to) => Cv2.Min(from, new Scalar(depth * PixelsPerMillimetre), to));
        using var rounded = deep.Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), 1));
        var heights = rounded.Mat.AsSpan<float>().ToArray();
        var (width, rows) = (mask.Mat.Width, mask.Mat.Height);
        var (worn, stains) = (Patches(width, rows, 2.2 * PixelsPerMillimetre, seed), Patches(width, rows, 0.25 * PixelsPerMillimetre, seed + 1));
        for (var i = 0; i < heights.Length; i++)
        {
            heights[i] *= (float)(-Math.Clamp(1 - (wear * (1 + worn[i])), 0.05, 1) / PixelsPerMillimetre);
            stains[i] = (float)Math.Clamp(1 + (0.12 * stains[i]), 0.5, 1.5);
        }

        return new CutLettering(heights, stains, width, rows);
    }

    /// <summary>Smooth noise of standard deviation 1.</summary>
    private static float[] Patches(int width, int rows, double size, int seed)
    {
        var random = new Random(seed);
        using var noise = NativeImage.Empty(rows, width, MatType.CV_32FC1);
        var values = noise.Mat.AsSpan<float>();
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = (float)(random.NextDouble() - 0.5);
        }

        using var smooth = noise.Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), size));
        Cv2.MeanStdDev(smooth.Mat, out var mean, out var deviation);
        return Array.ConvertAll(smooth.Mat.AsSpan<float>().ToArray(), value => (float)((value - mean.Val0) / Math.Max(1e-9, deviation.Val0)));
    }

    private double Value(float[] grid, double x, double y)
    {
        var (left, top) = ((int)x, (int)y);
        var (right, down) = (x - left, y - top);
        var at = (top * _width) + left;
        return ((1 - down) * (((1 - right) * grid[at]) + (right * grid[at + 1]))) + (down * (((1 - right) * grid[at + _width]) + (right * grid[at + _width + 1])));
    }
}
