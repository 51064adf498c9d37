using System;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Turns;

/// <summary>What a strip shows apart from light and shade: scratches, stains and lettering, with a weight for each place.</summary>
internal sealed class DetailPicture : IDisposable
{
    /// <summary>Width of the mean that is taken out, and of the scatter that is evened, in radii.</summary>
    private const double MeanWidth = 0.1;
    private const double ScatterWidth = 0.25;

    /// <summary>Scatter added before evening, grey levels: keeps noise of plain metal small.</summary>
    private const float SmallestScatter = 3;

    /// <summary>Detail is cut off at so many scatters.</summary>
    private const float LargestDetail = 3;

    /// <summary>Grey levels between which a place is neither burnt out nor black.</summary>
    private const byte Darkest = 6;
    private const byte Brightest = 249;

    private readonly float[] _detail;
    private DetailSpectra? _spectra;

    private DetailPicture(int width, int height, float[] detail, float[] weights)
    {
        Width = width;
        Height = height;
        _detail = detail;
        Weights = weights;
        TotalWeight = weights.Sum(weight => (double)weight);
    }

    internal int Width { get; }

    internal int Height { get; }

    internal float[] Weights { get; }

    internal double TotalWeight { get; }

    public void Dispose() => _spectra?.Dispose();

    /// <summary>Gives the transforms at a size; they are kept for the next picture to be compared with.</summary>
    internal DetailSpectra SpectraAt(int rows, int columns)
    {
        if (_spectra is null || _spectra.Rows != rows || _spectra.Columns != columns)
        {
            _spectra?.Dispose();
            _spectra = new DetailSpectra(this, rows, columns);
        }

        return _spectra;
    }

    /// <summary>Makes the detail of a strip.</summary>
    /// <param name="image">The strip.</param>
    /// <param name="map">Its map.</param>
    /// <param name="photoWidth">Columns of the photo.</param>
    /// <param name="photoHeight">Rows of the photo.</param>
    /// <param name="still">Grey levels that do not turn with the tube, pixel by pixel, to be taken out first; null for none.</param>
    internal static DetailPicture From(GrayImage image, CylinderStripMap map, int photoWidth, int photoHeight, float[]? still = null)
    {
        using var gray = NativeImage.View(image);
        using var floats = gray.Apply((from, to) => from.ConvertTo(to, MatType.CV_32FC1));
        if (still is not null)
        {
            var levels = floats.Mat.AsSpan<float>();
            for (var i = 0; i < levels.Length; i++)
            {
                levels[i] -= still[i];
            }
        }

        using var mean = floats.Blurred(MeanWidth * map.PixelsPerRadius);
        using var high = floats.Apply((from, to) => Cv2.Subtract(from, mean.Mat, to));
        using var square = high.Apply((from, to) => Cv2.Multiply(from, from, to));
        using var variance = square.Blurred(ScatterWidth * map.PixelsPerRadius);
        var detail = high.Mat.AsSpan<float>().ToArray();
        var scatter = variance.Mat.AsSpan<float>();
        var weights = new float[detail.Length];
        for (var y = 0; y < image.Height; y++)
        {
            var around = map.FirstAround.Radians + (y / map.PixelsPerRadius);
            var facing = (float)Math.Max(0, Math.Cos(around));
            for (var x = 0; x < image.Width; x++)
            {
                var at = (y * image.Width) + x;
                detail[at] = Math.Clamp(detail[at] / (MathF.Sqrt(scatter[at]) + SmallestScatter), -LargestDetail, LargestDetail);
                var photo = map.ToPhoto(new Measures.PixelPoint(x, y));
                var inside = photo.X >= 0 && photo.Y >= 0 && photo.X <= photoWidth - 1 && photo.Y <= photoHeight - 1;
                weights[at] = inside && image[x, y] is >= Darkest and <= Brightest ? facing : 0;
            }
        }

        // A streak of light runs along the tube: it is the same along a row and does not turn with the tube. A collar or a turned ring is the same along a column.
        TakeOutMeans(detail, weights, image.Height, image.Width, image.Width, 1);
        TakeOutMeans(detail, weights, image.Width, image.Height, 1, image.Width);
        return new DetailPicture(image.Width, image.Height, detail, weights);
    }

    /// <summary>Gives the same detail with weight only in one of several pieces along X.</summary>
    internal DetailPicture Only(int piece, int pieces)
    {
        var weights = new float[Weights.Length];
        var first = Width * piece / pieces;
        var end = Width * (piece + 1) / pieces;
        for (var y = 0; y < Height; y++)
        {
            Array.Copy(Weights, (y * Width) + first, weights, (y * Width) + first, end - first);
        }

        return new DetailPicture(Width, Height, _detail, weights);
    }

    /// <summary>Gives weight x detail (power 0) or weight x detail squared (power 1).</summary>
    internal float[] Weighted(int power)
    {
        var values = new float[_detail.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Weights[i] * _detail[i] * (power == 0 ? 1 : _detail[i]);
        }

        return values;
    }

    private static void TakeOutMeans(float[] detail, float[] weights, int runs, int length, int nextRun, int step)
    {
        for (var run = 0; run < runs; run++)
        {
            double sum = 0;
            double weight = 0;
            for (var i = 0; i < length; i++)
            {
                var at = (run * nextRun) + (i * step);
                sum += detail[at] * weights[at];
                weight += weights[at];
            }

            var mean = weight > 0 ? (float)(sum / weight) : 0;
            for (var i = 0; i < length; i++)
            {
                detail[(run * nextRun) + (i * step)] -= mean;
            }
        }
    }
}
