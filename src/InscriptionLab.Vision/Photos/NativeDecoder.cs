using System;
using ImageMagick;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Photos;

/// <summary>Decodes in this process. The one place where native code touches a file's bytes; the program itself lets <see cref="DecoderProcess"/> do it elsewhere.</summary>
public sealed class NativeDecoder : IPictureDecoder
{
    /// <summary>What the library has to say of a damaged file, in its own words, is not for the user's screen.</summary>
    static NativeDecoder() => Cv2.SetLogLevel(LogLevel.SILENT);

    /// <inheritdoc/>
    public ColourImage? Pixels(ReadOnlySpan<byte> file, bool isHeif)
    {
        try
        {
            using var picture = isHeif ? null : NativeImage.Own(Cv2.ImDecode(file, ImreadModes.Color | ImreadModes.IgnoreOrientation));
            return picture is null ? Heif(file) : picture.Mat.Empty() ? null : picture.ToColour();
        }
        catch (Exception exception) when (exception is OpenCVException or MagickException or OutOfMemoryException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public HeifHeader? Header(ReadOnlySpan<byte> file)
    {
        try
        {
            using var picture = new MagickImage();
            picture.Ping(file);
            var exif = picture.GetExifProfile();
            return new HeifHeader((int)picture.Width, (int)picture.Height, exif?.GetValue(ExifTag.FocalLengthIn35mmFilm)?.Value ?? 0);
        }
        catch (Exception exception) when (exception is MagickException or OutOfMemoryException)
        {
            return null;
        }
    }

    private static ColourImage? Heif(ReadOnlySpan<byte> file)
    {
        using var picture = new MagickImage(file);
        picture.ColorSpace = ColorSpace.sRGB;
        using var pixels = picture.GetPixels();
        return pixels.ToByteArray(PixelMapping.BGR) is { } blueGreenRed ? new ColourImage((int)picture.Width, (int)picture.Height, blueGreenRed) : null;
    }
}
