using System;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// The picture turned so that a tube's axis lies level, cut into upright strips, each averaged along the axis: what is left is how colour
/// changes across the tube, place after place along it. Not a number (NaN) stands where a strip leaves the picture.
/// </summary>
internal sealed class TurnedProfiles
{
    /// <summary>Share of a strip's width that must lie in the picture for its mean to count.</summary>
    private const double SmallestShare = 0.6;

    private readonly float[] _colours;
    private readonly double _cosine;
    private readonly double _sine;
    private readonly double _offsetX;
    private readonly double _offsetY;
    private readonly double _scale;

    private TurnedProfiles(float[] colours, double[] middles, int rows, int width, double angle, (double X, double Y) offset, double scale)
    {
        _colours = colours;
        Middles = middles;
        Rows = rows;
        Width = width;
        Angle = angle;
        _cosine = Math.Cos(angle);
        _sine = Math.Sin(angle);
        (_offsetX, _offsetY) = offset;
        _scale = scale;
    }

    /// <summary>Gets the middle of each strip, in turned pixels.</summary>
    internal double[] Middles { get; }

    internal int Strips => Middles.Length;

    internal int Rows { get; }

    internal int Width { get; }

    /// <summary>Gets the axis direction that was made level, in radians from the picture's X axis toward its Y axis.</summary>
    internal double Angle { get; }

    /// <summary>Gets the mean colour (L*, a*, b*) of a strip at a row.</summary>
    internal ReadOnlySpan<float> Colour(int strip, int row) => _colours.AsSpan(((strip * Rows) + row) * 3, 3);

    /// <summary>Gives a value indicating whether a strip shows the picture at a row.</summary>
    internal bool InPicture(int strip, int row) => !float.IsNaN(_colours[((strip * Rows) + row) * 3]);

    /// <summary>Gives the photo point of a turned point.</summary>
    internal PixelPoint ToPhoto(double x, double y)
    {
        var workX = (_cosine * (x - _offsetX)) - (_sine * (y - _offsetY));
        var workY = (_sine * (x - _offsetX)) + (_cosine * (y - _offsetY));
        return new PixelPoint(((workX + 0.5) / _scale) - 0.5, ((workY + 0.5) / _scale) - 0.5);
    }

    /// <summary>Turns a working picture and averages it strip by strip.</summary>
    /// <param name="picture">The working picture.</param>
    /// <param name="angle">Axis direction in radians, from X toward Y.</param>
    /// <param name="strips">Number of strips.</param>
    internal static TurnedProfiles From(LabPicture picture, double angle, int strips)
    {
        var source = picture.Image.Mat;
        var (sine, cosine) = Math.SinCos(angle);
        double MinOver(double x, double y) => Math.Min(0, x) + Math.Min(0, y);
        double MaxOver(double x, double y) => Math.Max(0, x) + Math.Max(0, y);
        var (w, h) = (source.Width - 1, source.Height - 1);
        var offsetX = -MinOver(cosine * w, sine * h);
        var offsetY = -MinOver(-sine * w, cosine * h);
        var width = (int)Math.Ceiling(MaxOver(cosine * w, sine * h) + offsetX) + 1;
        var rows = (int)Math.Ceiling(MaxOver(-sine * w, cosine * h) + offsetY) + 1;
        using var matrix = NativeImage.Own(new Mat(2, 3, MatType.CV_64FC1));
        new[] { cosine, sine, offsetX, -sine, cosine, offsetY }.CopyTo(matrix.Mat.AsSpan<double>());
        var size = new Size(width, rows);
        using var turned = picture.Image.Apply((from, to) =>
            Cv2.WarpAffine(from, to, matrix.Mat, size, InterpolationFlags.Linear, BorderTypes.Constant, new Scalar(float.NaN, float.NaN, float.NaN)));
        var middles = new double[strips];
        var colours = new float[strips * rows * 3];
        Average(turned.Mat.AsSpan<Vec3f>(), width, rows, middles, colours);
        return new TurnedProfiles(colours, middles, rows, width, angle, (offsetX, offsetY), picture.Scale);
    }

    private static void Average(ReadOnlySpan<Vec3f> turned, int width, int rows, double[] middles, float[] colours)
    {
        for (var strip = 0; strip < middles.Length; strip++)
        {
            var first = strip * width / middles.Length;
            var end = (strip + 1) * width / middles.Length;
            middles[strip] = (first + end - 1) / 2.0;
            for (var row = 0; row < rows; row++)
            {
                double l = 0;
                double a = 0;
                double b = 0;
                var count = 0;
                foreach (var pixel in turned.Slice((row * width) + first, end - first))
                {
                    if (!float.IsNaN(pixel.Item0))
                    {
                        l += pixel.Item0;
                        a += pixel.Item1;
                        b += pixel.Item2;
                        count++;
                    }
                }

                var at = ((strip * rows) + row) * 3;
                var enough = count >= SmallestShare * (end - first) && count > 0;
                colours[at] = enough ? (float)(l / count) : float.NaN;
                colours[at + 1] = enough ? (float)(a / count) : float.NaN;
                colours[at + 2] = enough ? (float)(b / count) : float.NaN;
            }
        }
    }
}
