using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>A photo's grey levels averaged down, for what does not need its own resolution: whether a scale lies there, and how the light falls over the tube.</summary>
internal sealed class ReducedPhoto
{
    private ReducedPhoto(GrayImage picture, double scale) => (Picture, Scale) = (picture, scale);

    /// <summary>Gets the picture: the photo itself where it is small.</summary>
    internal GrayImage Picture { get; }

    /// <summary>Gets the pixels of the picture for one of the photo; 1 or less.</summary>
    internal double Scale { get; }

    /// <summary>Brings a photo down to a longest side.</summary>
    internal static ReducedPhoto Of(GrayImage photo, int longest) => new ReducedPhoto(photo, 1).By((double)longest / Math.Max(photo.Width, photo.Height));

    /// <summary>Brings the picture farther down by a factor; stays as it is for 1 and more.</summary>
    internal ReducedPhoto By(double factor)
    {
        if (factor >= 1)
        {
            return this;
        }

        using var whole = NativeImage.View(Picture);
        using var small = whole.Apply((from, to) => Cv2.Resize(from, to, default, factor, factor, InterpolationFlags.Area));
        return new ReducedPhoto(small.ToGray(), Scale * factor);
    }

    /// <summary>Leads a map to this picture in place of the photo.</summary>
    internal IPixelMap To(IPixelMap photo) => new Reduced(photo, Scale);

    private sealed class Reduced(IPixelMap photo, double scale) : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point)
        {
            var at = photo.ToPhoto(point);
            return new PixelPoint(((at.X + 0.5) * scale) - 0.5, ((at.Y + 0.5) * scale) - 0.5);
        }
    }
}
