using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Cells;

/// <summary>Finds edge pixels in a small copy of the picture: in the colour channel that changes most, thinned along the gradient.</summary>
internal static class EdgePixels
{
    /// <summary>Blur before the gradient, in pixels of the small copy.</summary>
    private const double Blur = 1.2;

    /// <summary>Edge pixels kept, strongest first: a cell's circles have some thousands, the rest is background.</summary>
    private const int MostPixels = 14000;

    /// <summary>Weakest gradient kept, in grey levels a pixel.</summary>
    private const float WeakestGradient = 1.5f;

    /// <summary>Finds the edge pixels.</summary>
    /// <param name="image">Colour picture.</param>
    /// <param name="shrink">Scale of the small copy, 0 to 1.</param>
    /// <param name="without">Polygon to leave out, in the whole picture; may be empty.</param>
    internal static (List<EdgePixel> Pixels, int Width, int Height) Find(ColourImage image, double shrink, ImmutableArray<PixelPoint> without)
    {
        using var whole = NativeImage.View(image);
        using var small = whole.Apply((from, to) =>
        {
            Cv2.Resize(from, to, default, shrink, shrink, InterpolationFlags.Area);
            Cv2.GaussianBlur(to, to, new Size(0, 0), Blur);
        });
        using var right = small.Apply((from, to) => Cv2.Scharr(from, to, MatType.CV_32F, 1, 0, 1 / 32.0));
        using var down = small.Apply((from, to) => Cv2.Scharr(from, to, MatType.CV_32F, 0, 1, 1 / 32.0));
        right.Mat.GetArray(out Vec3f[] gx);
        down.Mat.GetArray(out Vec3f[] gy);
        var (width, height) = (small.Mat.Width, small.Mat.Height);
        var (x, y, strength) = Strongest(gx, gy);
        var outline = without.Select(p => new PixelPoint(((p.X + 0.5) * shrink) - 0.5, ((p.Y + 0.5) * shrink) - 0.5)).ToArray();
        var found = new List<EdgePixel>();
        for (var row = 1; row < height - 1; row++)
        {
            for (var column = 1; column < width - 1; column++)
            {
                var at = (row * width) + column;
                if (strength[at] < WeakestGradient || !IsRidge(strength, width, at, x[at] / strength[at], y[at] / strength[at]) || Inside(outline, column, row))
                {
                    continue;
                }

                found.Add(new EdgePixel(column, row, x[at] / strength[at], y[at] / strength[at], strength[at]));
            }
        }

        return ([.. found.OrderByDescending(p => p.Strength).Take(MostPixels)], width, height);
    }

    /// <summary>Says whether a point lies inside a polygon (even-odd rule); an empty polygon holds nothing.</summary>
    internal static bool Inside(PixelPoint[] polygon, double x, double y)
    {
        var inside = false;
        for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
        {
            if ((polygon[i].Y > y) != (polygon[j].Y > y)
                && x < ((polygon[j].X - polygon[i].X) * (y - polygon[i].Y) / (polygon[j].Y - polygon[i].Y)) + polygon[i].X)
            {
                inside = !inside;
            }
        }

        return inside;
    }

    private static (float[] X, float[] Y, float[] Strength) Strongest(Vec3f[] gx, Vec3f[] gy)
    {
        var (x, y, strength) = (new float[gx.Length], new float[gx.Length], new float[gx.Length]);
        for (var i = 0; i < gx.Length; i++)
        {
            for (var channel = 0; channel < ColourImage.Channels; channel++)
            {
                var (a, b) = (gx[i][channel], gy[i][channel]);
                var size = MathF.Sqrt((a * a) + (b * b));
                if (size > strength[i])
                {
                    (x[i], y[i], strength[i]) = (a, b, size);
                }
            }
        }

        return (x, y, strength);
    }

    private static bool IsRidge(float[] strength, int width, int at, float gx, float gy)
    {
        var step = MathF.Abs(gx) > 0.92f ? 1 : MathF.Abs(gy) > 0.92f ? width : (gx * gy > 0 ? width + 1 : width - 1);
        return strength[at] >= strength[at - step] && strength[at] > strength[at + step];
    }
}
