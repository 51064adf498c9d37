using System;
using System.Numerics;
using InscriptionLab.Imaging;

namespace InscriptionLab.Likeness;

/// <summary>
/// 64 bits that stay nearly the same when a picture is saved again, made smaller or brightened: the signs of the lowest frequencies of its
/// cosine transform against their median (the usual DCT hash, C. Zauner, "Implementation and benchmarking of perceptual image hash functions", 2010).
/// </summary>
public static class PerceptualHash
{
    private const int Side = 32;
    private const int Low = 8;
    private static readonly float[] Cosines = MakeCosines();

    /// <summary>Takes the hash of a picture.</summary>
    public static ulong Of(GrayImage image)
    {
        ArgumentNullException.ThrowIfNull(image);
        var grid = PictureScaler.ToGrid(image, Side, Side);
        Span<float> low = stackalloc float[Low * Low];
        Span<float> rows = stackalloc float[Low * Side];
        for (var y = 0; y < Side; y++)
        {
            for (var u = 0; u < Low; u++)
            {
                float sum = 0;
                for (var x = 0; x < Side; x++)
                {
                    sum += grid[(y * Side) + x] * Cosines[(u * Side) + x];
                }

                rows[(u * Side) + y] = sum;
            }
        }

        for (var u = 0; u < Low; u++)
        {
            for (var v = 0; v < Low; v++)
            {
                float sum = 0;
                for (var y = 0; y < Side; y++)
                {
                    sum += rows[(u * Side) + y] * Cosines[(v * Side) + y];
                }

                low[(v * Low) + u] = sum;
            }
        }

        return Signs(low);
    }

    /// <summary>Gives the number of bits in which two hashes differ, 0 to 64.</summary>
    public static int Distance(ulong left, ulong right) => BitOperations.PopCount(left ^ right);

    private static ulong Signs(ReadOnlySpan<float> low)
    {
        // The mean level of the picture (frequency 0) says nothing and would move the median.
        Span<float> sorted = stackalloc float[low.Length - 1];
        low[1..].CopyTo(sorted);
        sorted.Sort();
        var median = sorted[sorted.Length / 2];
        ulong hash = 0;
        for (var index = 1; index < low.Length; index++)
        {
            hash |= low[index] > median ? 1UL << index : 0;
        }

        return hash;
    }

    private static float[] MakeCosines()
    {
        var cosines = new float[Low * Side];
        for (var u = 0; u < Low; u++)
        {
            for (var x = 0; x < Side; x++)
            {
                cosines[(u * Side) + x] = MathF.Cos((((2 * x) + 1) * u * MathF.PI) / (2 * Side));
            }
        }

        return cosines;
    }
}
