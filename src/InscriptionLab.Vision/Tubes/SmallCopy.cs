using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A photo shrunk once by a whole factor, so that smaller copies need not look at all of its pixels again.</summary>
internal sealed class SmallCopy : IDisposable
{
    private readonly NativeImage _image;

    private SmallCopy(NativeImage image, int width, int height)
    {
        _image = image;
        PhotoWidth = width;
        PhotoHeight = height;
    }

    /// <summary>Gets the columns of the photo.</summary>
    internal int PhotoWidth { get; }

    /// <summary>Gets the rows of the photo.</summary>
    internal int PhotoHeight { get; }

    /// <inheritdoc/>
    public void Dispose() => _image.Dispose();

    /// <summary>Shrinks a photo as far as its longer side stays no shorter than given.</summary>
    internal static SmallCopy Of(ColourImage photo, int longerSide)
    {
        var factor = Math.Max(1, Math.Max(photo.Width, photo.Height) / longerSide);
        return new SmallCopy(factor == 1 ? NativeImage.View(photo) : Shrunk(photo, factor), photo.Width, photo.Height);
    }

    /// <summary>Averages whole blocks only: what is left over at the right and the bottom is less than one pixel of the copy.</summary>
    private static NativeImage Shrunk(ColourImage photo, int factor)
    {
        using var full = NativeImage.View(photo);
        var (columns, rows) = (photo.Width / factor, photo.Height / factor);
        using var whole = NativeImage.Own(new Mat(full.Mat, new Rect(0, 0, columns * factor, rows * factor)));
        return whole.Apply((from, to) => Cv2.Resize(from, to, new Size(columns, rows), 0, 0, InterpolationFlags.Area));
    }

    /// <summary>Gives a copy of the photo whose longer side is no longer than given.</summary>
    internal NativeImage To(int longerSide, out double scale)
    {
        scale = (double)longerSide / Math.Max(PhotoWidth, PhotoHeight);
        var size = new Size(Math.Max(1, (int)Math.Round(PhotoWidth * scale)), Math.Max(1, (int)Math.Round(PhotoHeight * scale)));
        var way = size.Width <= _image.Mat.Width ? InterpolationFlags.Area : InterpolationFlags.Linear;
        return _image.Apply((from, to) => Cv2.Resize(from, to, size, 0, 0, way));
    }
}
