using System;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A photo shrunk to a working size in the CIE L*a*b* colour space, where equal distances look about equal.</summary>
internal sealed class LabPicture : IDisposable
{
    private LabPicture(NativeImage image, double scale)
    {
        Image = image;
        Scale = scale;
    }

    /// <summary>Gets the picture: three floats a pixel, L* 0 to 100.</summary>
    internal NativeImage Image { get; }

    /// <summary>Gets the working pixels per photo pixel, 1 or less.</summary>
    internal double Scale { get; }

    /// <inheritdoc/>
    public void Dispose() => Image.Dispose();

    /// <summary>Shrinks a colour picture until its longer side is no longer than given.</summary>
    internal static LabPicture From(SmallCopy copy, int longerSide)
    {
        using var small = copy.To(Math.Min(longerSide, Math.Max(copy.PhotoWidth, copy.PhotoHeight)), out var scale);
        using var floats = small.Apply((from, to) => from.ConvertTo(to, MatType.CV_32FC3, 1 / 255.0));
        return new LabPicture(floats.Apply((from, to) => Cv2.CvtColor(from, to, ColorConversionCodes.BGR2Lab)), scale);
    }
}
