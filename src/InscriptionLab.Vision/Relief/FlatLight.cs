using System;
using InscriptionLab.Imaging;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Relief;

/// <summary>One strip's levels over those of bare metal at the same place: exposure, distance of the lamp, the tube's own curve and slow stains drop out, and what stands out of the cylinder stays.</summary>
internal sealed class FlatLight
{
    private const int Rounds = 3;

    /// <summary>Levels farther from the ground than this, as a share of it, are grooves or reflections and do not count for it.</summary>
    private const double Stands = 0.35;

    private FlatLight(int width, int height, float[] over, float[] ground)
    {
        (Width, Height, Over, Ground) = (width, height, over, ground);
    }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>Gets level over ground; -1 where the photo is burnt out.</summary>
    internal float[] Over { get; }

    /// <summary>Gets the linear levels of bare metal, 0 to 1.</summary>
    internal float[] Ground { get; }

    internal static FlatLight Of(Strip strip, ReliefOptions options)
    {
        var image = strip.Image;
        var (along, around) = (options.GroundAlong * strip.PixelsPerDiameter, options.GroundAround * strip.PixelsPerDiameter);
        var levels = Array.ConvertAll(image.Pixels.ToArray(), SrgbLight.Of);
        var weights = new float[levels.Length];
        Array.Fill(weights, 1f);
        var ground = Smooth(levels, weights, image, along, around);
        for (var round = 1; round < Rounds; round++)
        {
            for (var i = 0; i < weights.Length; i++)
            {
                weights[i] = Math.Abs(levels[i] - ground[i]) <= Stands * ground[i] ? 1f : 0.05f;
            }

            ground = Smooth(levels, weights, image, along, around);
        }

        var over = new float[levels.Length];
        for (var i = 0; i < over.Length; i++)
        {
            over[i] = image.Pixels[i] >= options.BurntFrom ? -1 : levels[i] / Math.Max(ground[i], 1e-4f);
        }

        return new FlatLight(image.Width, image.Height, over, ground);
    }

    private static float[] Smooth(float[] levels, float[] weights, GrayImage size, double along, double around)
    {
        var weighed = new float[levels.Length];
        for (var i = 0; i < levels.Length; i++)
        {
            weighed[i] = levels[i] * weights[i];
        }

        var (sum, weight) = (Blurred(weighed, size.Width, size.Height, along, around), Blurred(weights, size.Width, size.Height, along, around));
        for (var i = 0; i < sum.Length; i++)
        {
            sum[i] /= Math.Max(weight[i], 1e-6f);
        }

        return sum;
    }

    internal static float[] Blurred(float[] values, int width, int height, double sigmaX, double sigmaY)
    {
        using var from = NativeImage.Own(new Mat(height, width, MatType.CV_32FC1));
        values.CopyTo(from.Mat.AsSpan<float>());
        using var blurred = from.Blurred(sigmaX, sigmaY);
        return blurred.Mat.AsSpan<float>().ToArray();
    }
}
