using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A photo in full size with its sRGB coding undone: blur mixes light, so the middle of a blurred edge is half way in light, not in coded levels.</summary>
internal sealed class LinearPicture : IDisposable
{
    /// <summary>sRGB decoding, IEC 61966-2-1: below the knee a straight line, above it a power.</summary>
    private const double Knee = 0.04045;
    private const double KneeSlope = 12.92;
    private const double Offset = 0.055;
    private const double Power = 2.4;

    private LinearPicture(NativeImage image) => Image = image;

    /// <summary>Gets the picture: three floats a pixel, 0 to 1 in light.</summary>
    internal NativeImage Image { get; }

    /// <inheritdoc/>
    public void Dispose() => Image.Dispose();

    internal static LinearPicture From(ColourImage colour)
    {
        using var coded = NativeImage.View(colour);
        using var table = NativeImage.Own(new Mat(1, 256, MatType.CV_32FC1));
        var levels = table.Mat.AsSpan<float>();
        for (var i = 0; i < levels.Length; i++)
        {
            var level = i / 255.0;
            levels[i] = (float)(level <= Knee ? level / KneeSlope : Math.Pow((level + Offset) / (1 + Offset), Power));
        }

        return new LinearPicture(coded.Apply((from, to) => Cv2.LUT(from, table.Mat, to)));
    }
}
