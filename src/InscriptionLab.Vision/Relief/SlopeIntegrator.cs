using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Relief;

/// <summary>
/// Heights from slopes: of all surfaces the one whose slopes come nearest, found wave by wave (R. T. Frankot and R. Chellappa, IEEE PAMI 10, 1988, 439-451). Waves longer
/// than a limit are damped, since errors of slopes add up to them.
/// </summary>
public static class SlopeIntegrator
{
    /// <summary>Share of a side over which slopes fade out, so that the two ends of the picture, which a transform joins, do not differ.</summary>
    private const double Fade = 0.03;

    /// <summary>Integrates slopes in both directions.</summary>
    /// <param name="slopeX">Rise to the right, per pixel.</param>
    /// <param name="slopeY">Rise downward in the picture, per pixel; same size.</param>
    /// <param name="longestWave">Wave length in pixels from which waves are damped to half and less.</param>
    /// <returns>Heights in pixels, their mean zero.</returns>
    public static FloatImage Integrate(FloatImage slopeX, FloatImage slopeY, double longestWave)
    {
        ArgumentNullException.ThrowIfNull(slopeX);
        ArgumentNullException.ThrowIfNull(slopeY);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestWave);
        var cut = 2 * Math.PI / longestWave;
        return Filter(slopeX, slopeY, (u, v) => ((u, v), 1 / ((u * u) + (v * v) + (cut * cut))));
    }

    /// <summary>Integrates slopes that are known in one direction only; waves that run along the other keep height zero.</summary>
    /// <param name="slope">Rise in the direction, per pixel.</param>
    /// <param name="directionX">The direction's part to the right; with <paramref name="directionY"/> a unit vector.</param>
    /// <param name="directionY">The direction's part downward.</param>
    /// <param name="longestWave">Wave length in pixels from which waves are damped to half and less.</param>
    /// <returns>Heights in pixels, their mean zero.</returns>
    public static FloatImage Integrate(FloatImage slope, double directionX, double directionY, double longestWave)
    {
        ArgumentNullException.ThrowIfNull(slope);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestWave);
        var cut = 2 * Math.PI / longestWave;
        return Filter(slope, null, (u, v) =>
        {
            var along = (u * directionX) + (v * directionY);
            return ((along, 0), 1 / ((along * along) + (cut * cut)));
        });
    }

    private static FloatImage Filter(FloatImage first, FloatImage? second, Func<double, double, ((double U, double V) By, double Norm)> filter)
    {
        var (width, height) = (first.Width, first.Height);
        var (columns, rows) = (Cv2.GetOptimalDFTSize(width), Cv2.GetOptimalDFTSize(height));
        var one = Spectrum(first, columns, rows);
        var other = second is null ? null : Spectrum(second, columns, rows);
        using var heights = NativeImage.Own(new Mat(rows, columns, MatType.CV_32FC2));
        var target = heights.Mat.AsSpan<Vec2f>();
        for (var row = 0; row < rows; row++)
        {
            var v = 2 * Math.PI * DftIndex.Signed(row, rows) / rows;
            for (var column = 0; column < columns; column++)
            {
                var at = (row * columns) + column;
                var ((byU, byV), norm) = filter(2 * Math.PI * DftIndex.Signed(column, columns) / columns, v);
                var (p, q) = (one[at], other is null ? default : other[at]);

                // (-i u P - i v Q) / norm
                target[at] = new Vec2f((float)(((byU * p.Item1) + (byV * q.Item1)) * norm), (float)(-((byU * p.Item0) + (byV * q.Item0)) * norm));
            }
        }

        target[0] = default;
        using var back = heights.Apply((from, to) => Cv2.Idft(from, to, DftFlags.Scale | DftFlags.RealOutput));
        var all = back.Mat.AsSpan<float>();
        var values = new float[width * height];
        for (var row = 0; row < height; row++)
        {
            all.Slice(row * columns, width).CopyTo(values.AsSpan(row * width, width));
        }

        return new FloatImage(width, height, values);
    }

    private static Vec2f[] Spectrum(FloatImage slopes, int columns, int rows)
    {
        using var padded = NativeImage.Own(new Mat(rows, columns, MatType.CV_32FC1, new Scalar(0)));
        var to = padded.Mat.AsSpan<float>();
        for (var row = 0; row < slopes.Height; row++)
        {
            var down = Faded(row, slopes.Height);
            for (var column = 0; column < slopes.Width; column++)
            {
                to[(row * columns) + column] = (float)(slopes[column, row] * down * Faded(column, slopes.Width));
            }
        }

        using var spectrum = padded.Apply((from, target) => Cv2.Dft(from, target, DftFlags.ComplexOutput));
        return spectrum.Mat.AsSpan<Vec2f>().ToArray();
    }

    private static double Faded(int place, int length)
    {
        var ramp = Fade * length;
        var near = Math.Min(place, length - 1 - place) + 0.5;
        return near >= ramp ? 1 : near / ramp;
    }
}
