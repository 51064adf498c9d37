using System;
using System.Collections.Generic;
using System.Globalization;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Pictures;

/// <summary>Turns pictures into the bytes of picture files. Each throws one sentence where a picture is larger than its kind of file holds.</summary>
public static class PictureEncoder
{
    /// <summary>JPEG quality of pictures to look at: at 90 the blocks cannot be seen in grooves (common practice).</summary>
    private const int JpegQuality = 90;

    /// <summary>Gives a grey picture as a PNG file, exact.</summary>
    public static byte[] ToPng(GrayImage picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var native = NativeImage.View(picture);
        return Encode(native, ".png");
    }

    /// <summary>Gives a colour picture as a PNG file, exact.</summary>
    public static byte[] ToPng(ColourImage picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var native = NativeImage.View(picture);
        return Encode(native, ".png");
    }

    /// <summary>Gives a colour picture as a PNG file, shrunk where its longer side is above a limit.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="longestSide">Longest side of the result in pixels, above zero.</param>
    public static byte[] ToPng(ColourImage picture, int longestSide)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestSide);
        using var native = NativeImage.View(picture);
        using var small = Shrunk(native, longestSide);
        return Encode(small ?? native, ".png");
    }

    /// <summary>Gives a grey picture with marks drawn on it as a PNG file, exact but for the marks.</summary>
    public static byte[] ToPng(GrayImage picture, IEnumerable<Mark> marks) => PicturePainter.Painted(picture, marks, canvas => Encode(canvas, ".png"));

    /// <summary>Gives a colour picture with marks drawn on it as a JPEG file to look at.</summary>
    public static byte[] ToJpeg(ColourImage picture, IEnumerable<Mark> marks) =>
        PicturePainter.Painted(picture, marks, canvas => Encode(canvas, ".jpg", (int)ImwriteFlags.JpegQuality, JpegQuality));

    /// <summary>Gives a grey picture as a JPEG file to look at.</summary>
    public static byte[] ToJpeg(GrayImage picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var native = NativeImage.View(picture);
        return Encode(native, ".jpg", (int)ImwriteFlags.JpegQuality, JpegQuality);
    }

    /// <summary>Gives a grey picture as a JPEG file to look at, shrunk where its longer side is above a limit.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="longestSide">Longest side of the result in pixels, above zero.</param>
    public static byte[] ToJpeg(GrayImage picture, int longestSide)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestSide);
        using var native = NativeImage.View(picture);
        using var small = Shrunk(native, longestSide);
        return Encode(small ?? native, ".jpg", (int)ImwriteFlags.JpegQuality, JpegQuality);
    }

    /// <summary>Gives a colour picture as a JPEG file to look at, shrunk where its longer side is above a limit.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="longestSide">Longest side of the result in pixels, above zero.</param>
    public static byte[] ToJpeg(ColourImage picture, int longestSide)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestSide);
        using var native = NativeImage.View(picture);
        using var small = Shrunk(native, longestSide);
        return Encode(small ?? native, ".jpg", (int)ImwriteFlags.JpegQuality, JpegQuality);
    }

    private static NativeImage? Shrunk(NativeImage picture, int longestSide)
    {
        var shrink = (double)longestSide / Math.Max(picture.Mat.Width, picture.Mat.Height);
        return shrink >= 1 ? null : picture.Apply((from, to) => Cv2.Resize(from, to, default, shrink, shrink, InterpolationFlags.Area));
    }

    private static byte[] Encode(NativeImage picture, string extension, params int[] options)
    {
        var (width, height) = (picture.Mat.Width, picture.Mat.Height);
        return Cv2.ImEncode(extension, picture.Mat, out var bytes, options)
            ? bytes
            : throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"A picture of {width} x {height} pixels does not go into a {extension} file; give a smaller photo."));
    }
}
