using System;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Strips;

/// <summary>
/// Normalised correlation of two pictures of which only a part counts, for every shift at once (Padfield, IEEE Transactions on Image Processing 21,
/// 2012, 2706-2718, with weights in place of masks and means taken out beforehand).
/// </summary>
internal static class MaskedCorrelation
{
    /// <summary>Finds the shift at which the second picture fits the first best.</summary>
    /// <param name="first">First picture; its detail has zero mean.</param>
    /// <param name="second">Second picture of the same size.</param>
    /// <param name="mostX">Largest shift along X, pixels.</param>
    /// <param name="smallestOverlap">Least weight, as a share of the larger picture's own, over which the pictures must overlap.</param>
    /// <returns>What must be added to a point of the first picture to come to the same place in the second, and the correlation there.</returns>
    internal static (double X, double Y, double Agreement) Best(DetailPicture first, DetailPicture second, int mostX, double smallestOverlap)
    {
        var columns = Cv2.GetOptimalDFTSize(first.Width + mostX);
        var rows = Cv2.GetOptimalDFTSize(2 * first.Height);
        using var detail1 = Spectrum(first.Weighted(0), first, rows, columns);
        using var weight1 = Spectrum(first.Weights, first, rows, columns);
        using var square1 = Spectrum(first.Weighted(1), first, rows, columns);
        using var detail2 = Spectrum(second.Weighted(0), second, rows, columns);
        using var weight2 = Spectrum(second.Weights, second, rows, columns);
        using var square2 = Spectrum(second.Weighted(1), second, rows, columns);
        var cross = Correlate(detail1, detail2);
        var energy1 = Correlate(square1, weight2);
        var energy2 = Correlate(weight1, square2);
        var overlap = Correlate(weight1, weight2);
        var least = smallestOverlap * Math.Max(first.TotalWeight, second.TotalWeight);
        var score = new float[rows * columns];
        var best = -1;
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var at = (row * columns) + column;
                var x = column > columns / 2 ? column - columns : column;
                if (Math.Abs(x) > mostX || overlap[at] < least)
                {
                    continue;
                }

                score[at] = cross[at] / (float)Math.Sqrt(Math.Max(energy1[at] * (double)energy2[at], 1e-12));
                if (best < 0 || score[at] > score[best])
                {
                    best = at;
                }
            }
        }

        if (best < 0)
        {
            return (0, 0, -1);
        }

        var (bestRow, bestColumn) = Math.DivRem(best, columns);
        float At(int row, int column) => score[((row + rows) % rows * columns) + ((column + columns) % columns)];
        var shiftX = Vertex(At(bestRow, bestColumn - 1), score[best], At(bestRow, bestColumn + 1));
        var shiftY = Vertex(At(bestRow - 1, bestColumn), score[best], At(bestRow + 1, bestColumn));
        return (
            (bestColumn > columns / 2 ? bestColumn - columns : bestColumn) + shiftX,
            (bestRow > rows / 2 ? bestRow - rows : bestRow) + shiftY,
            score[best]);
    }

    private static double Vertex(float before, float at, float after)
    {
        var curve = before - (2 * at) + after;
        return curve < 0 ? Math.Clamp((before - after) / (2 * curve), -0.5, 0.5) : 0;
    }

    private static NativeImage Spectrum(float[] values, DetailPicture picture, int rows, int columns)
    {
        using var padded = NativeImage.Own(new Mat(rows, columns, MatType.CV_32FC1, Scalar.All(0)));
        var target = padded.Mat.AsSpan<float>();
        for (var row = 0; row < picture.Height; row++)
        {
            values.AsSpan(row * picture.Width, picture.Width).CopyTo(target[(row * columns)..]);
        }

        return padded.Apply((from, to) => Cv2.Dft(from, to, DftFlags.ComplexOutput));
    }

    /// <summary>Sum over p of first(p) second(p + shift), for every shift.</summary>
    private static float[] Correlate(NativeImage first, NativeImage second)
    {
        using var product = second.Apply((from, to) => Cv2.MulSpectrums(from, first.Mat, to, DftFlags.None, conjB: true));
        using var result = product.Apply((from, to) => Cv2.Idft(from, to, DftFlags.Scale | DftFlags.RealOutput));
        return result.Mat.AsSpan<float>().ToArray();
    }
}
