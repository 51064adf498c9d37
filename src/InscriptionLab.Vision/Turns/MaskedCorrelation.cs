using System;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Turns;

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
    /// <param name="near">Shift near which to look; null for everywhere.</param>
    /// <param name="within">How near, pixels.</param>
    /// <param name="usualX">Standard deviation of shifts along X as they are to be expected, pixels.</param>
    /// <returns>What must be added to a point of the first picture to come to the same place in the second, and how well it fits there.</returns>
    internal static DetailFit Best(DetailPicture first, DetailPicture second, int mostX, double smallestOverlap, (double X, double Y)? near = null, double within = 0, double usualX = double.PositiveInfinity)
    {
        var columns = Cv2.GetOptimalDFTSize(first.Width + mostX);
        var rows = Cv2.GetOptimalDFTSize(2 * first.Height);
        var one = first.SpectraAt(rows, columns);
        var other = second.SpectraAt(rows, columns);
        var cross = Correlate(one.Detail, other.Detail);
        var energy1 = Correlate(one.Square, other.Weight);
        var energy2 = Correlate(one.Weight, other.Square);
        var overlap = Correlate(one.Weight, other.Weight);
        var least = smallestOverlap * Math.Max(first.TotalWeight, second.TotalWeight);
        var score = new float[rows * columns];
        var (squares, places) = (0.0, 0);
        for (var at = 0; at < score.Length; at++)
        {
            if (Math.Abs(DftIndex.Signed(at % columns, columns)) <= mostX && overlap[at] >= least)
            {
                // By chance a correlation reaches as much as one over the root of what it is taken over.
                score[at] = cross[at] / (float)Math.Sqrt(Math.Max(energy1[at] * (double)energy2[at], 1e-12)) * MathF.Sqrt(overlap[at]);
                squares += score[at] * score[at];
                places++;
            }
        }

        // Squared, a score in standard deviations is twice a log-likelihood: what is known of the shift beforehand is added there.
        var scatter = Math.Max(squares / Math.Max(places, 1), 1e-12);
        var (best, most) = (-1, 0.0);
        for (var at = 0; at < score.Length; at++)
        {
            var (x, y) = (DftIndex.Signed(at % columns, columns), DftIndex.Signed(at / columns, rows));
            var weighed = (score[at] * score[at] / scatter) - (x * x / (usualX * usualX));
            if (score[at] > 0 && weighed > most && (near is not { } place || (Math.Abs(x - place.X) <= within && Math.Abs(y - place.Y) <= within)))
            {
                (best, most) = (at, weighed);
            }
        }

        if (best < 0)
        {
            return new DetailFit(0, 0, -1, 0);
        }

        var (bestRow, bestColumn) = Math.DivRem(best, columns);
        float At(int row, int column) => score[((row + rows) % rows * columns) + ((column + columns) % columns)];
        var shiftX = Vertex(At(bestRow, bestColumn - 1), score[best], At(bestRow, bestColumn + 1));
        var shiftY = Vertex(At(bestRow - 1, bestColumn), score[best], At(bestRow + 1, bestColumn));
        return new DetailFit(
            DftIndex.Signed(bestColumn, columns) + shiftX,
            DftIndex.Signed(bestRow, rows) + shiftY,
            score[best] / Math.Sqrt(overlap[best]),
            Math.Sqrt(most));
    }

    private static double Vertex(float before, float at, float after)
    {
        var curve = before - (2 * at) + after;
        return curve < 0 ? Math.Clamp((before - after) / (2 * curve), -0.5, 0.5) : 0;
    }

    /// <summary>Sum over p of first(p) second(p + shift), for every shift.</summary>
    private static float[] Correlate(NativeImage first, NativeImage second)
    {
        using var product = second.Apply((from, to) => Cv2.MulSpectrums(from, first.Mat, to, DftFlags.None, conjB: true));
        using var result = product.Apply((from, to) => Cv2.Idft(from, to, DftFlags.Scale | DftFlags.RealOutput));
        return result.Mat.AsSpan<float>().ToArray();
    }
}
