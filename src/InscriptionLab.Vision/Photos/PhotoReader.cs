using System;
using System.IO;
using System.Security.Cryptography;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Photos;

/// <summary>The first stage: a file becomes an upright photo with its hash, lens data and quality figures, or one clear sentence.</summary>
/// <remarks>The header is judged before a pixel is decoded; the pixels come from a decoder that refuses cut files; the orientation tag is applied here, once.</remarks>
public sealed class PhotoReader
{
    private readonly PhotoLimits _limits;
    private readonly IPictureDecoder _decoder;

    /// <summary>Makes the stage.</summary>
    /// <param name="limits">How much of a stranger's file is taken on.</param>
    /// <param name="decoder">What makes pixels of bytes; null to decode in this process.</param>
    public PhotoReader(PhotoLimits limits, IPictureDecoder? decoder = null)
    {
        ArgumentNullException.ThrowIfNull(limits);
        _limits = limits;
        _decoder = decoder ?? new NativeDecoder();
    }

    /// <summary>Reads a photo file.</summary>
    /// <param name="file">Path as the user gave it; it becomes <see cref="Photo.File"/>.</param>
    /// <exception cref="InscriptionLabException">The file is missing, unreadable, no picture, too large, too small or damaged, or took too long (<see cref="InscriptionLabException.MayPass"/>).</exception>
    public Photo Read(string file)
    {
        ArgumentException.ThrowIfNullOrEmpty(file);
        var bytes = ReadBytes(file);
        var (header, stored) = Decode(file, bytes);
        if (stored is null || stored.Width != header.Width || stored.Height != header.Height)
        {
            throw new InscriptionLabException($"{file}: the picture is cut off or damaged; copy or download the photo again.");
        }

        using var picture = NativeImage.View(stored);
        using var turned = header.OrientationApplied ? null : Turn(picture, header.Lens.Orientation);
        using var grey = (turned ?? picture).Apply((from, to) => Cv2.CvtColor(from, to, ColorConversionCodes.BGR2GRAY));
        var quality = PhotoQualityMeter.Measure(grey) with { JpegQuality = header.JpegQuality };
        return new Photo(file, Convert.ToHexStringLower(SHA256.HashData(bytes)), turned?.ToColour() ?? stored, grey.ToGray(), header.Lens, quality);
    }

    /// <summary>Reads from a photo file's header how many pixels it has; decodes none.</summary>
    /// <param name="file">Path as the user gave it.</param>
    /// <exception cref="InscriptionLabException"><see cref="Read"/> would refuse the file.</exception>
    public long PixelsOf(string file)
    {
        ArgumentException.ThrowIfNullOrEmpty(file);
        var header = HeaderReader.Read(file, ReadBytes(file), _decoder);
        CheckSize(file, header);
        return (long)header.Width * header.Height;
    }

    private (PhotoHeader Header, ColourImage? Stored) Decode(string file, byte[] bytes)
    {
        try
        {
            var header = HeaderReader.Read(file, bytes, _decoder);
            CheckSize(file, header);
            return (header, _decoder.Pixels(bytes, header.Heif));
        }
        catch (InscriptionLabException slow) when (slow.MayPass)
        {
            // The decoder does not know the file's name.
            throw new InscriptionLabException($"{file}: {char.ToLowerInvariant(slow.Message[0])}{slow.Message[1..]}", slow) { MayPass = true };
        }
    }

    private byte[] ReadBytes(string file)
    {
        if (Directory.Exists(file))
        {
            throw new InscriptionLabException($"{file}: this is a folder; name the photos in it, for example {Path.Combine(file, "*.jpg")}.");
        }

        if (!File.Exists(file))
        {
            throw new InscriptionLabException($"{file}: there is no such file; check the name and the folder.");
        }

        try
        {
            var length = new FileInfo(file).Length;
            if (length == 0)
            {
                throw new InscriptionLabException($"{file}: the file is empty; copy or download the photo again.");
            }

            if (length > _limits.FileBytes)
            {
                throw new InscriptionLabException($"{file}: the file is larger than {_limits.FileBytes / (1024 * 1024)} MB; give a smaller copy of the photo.");
            }

            return File.ReadAllBytes(file);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new InscriptionLabException($"{file}: the file cannot be read; check that you may open it.", exception);
        }
    }

    private void CheckSize(string file, PhotoHeader header)
    {
        if ((long)header.Width * header.Height > _limits.Pixels)
        {
            throw new InscriptionLabException(
                $"{file}: the picture has {header.Width} x {header.Height} pixels, more than the {_limits.Pixels / 1_000_000} million taken; give a smaller copy.");
        }

        if (Math.Max(header.Width, header.Height) > _limits.LongestSide)
        {
            throw new InscriptionLabException(
                $"{file}: the picture is {Math.Max(header.Width, header.Height)} pixels long, more than the {_limits.LongestSide} taken; give a smaller copy, or the part with the lettering.");
        }

        if (Math.Min(header.Width, header.Height) < _limits.SmallestSide)
        {
            throw new InscriptionLabException(
                $"{file}: the picture has only {header.Width} x {header.Height} pixels; give a photo at least {_limits.SmallestSide} pixels on each side.");
        }
    }

    /// <summary>Applies an EXIF orientation (CIPA DC-008, tag 0x0112: 1 upright, 2 mirrored, 3 half turn, 4 flipped, 5-8 the same after a quarter turn).</summary>
    private static NativeImage? Turn(NativeImage stored, int orientation) => orientation switch
    {
        2 => stored.Apply((from, to) => Cv2.Flip(from, to, FlipMode.Y)),
        3 => stored.Apply((from, to) => Cv2.Rotate(from, to, RotateFlags.Rotate180)),
        4 => stored.Apply((from, to) => Cv2.Flip(from, to, FlipMode.X)),
        5 => stored.Apply((from, to) => Cv2.Transpose(from, to)),
        6 => stored.Apply((from, to) => Cv2.Rotate(from, to, RotateFlags.Rotate90Clockwise)),
        7 => Transverse(stored),
        8 => stored.Apply((from, to) => Cv2.Rotate(from, to, RotateFlags.Rotate90Counterclockwise)),
        _ => null,
    };

    private static NativeImage Transverse(NativeImage stored)
    {
        using var transposed = stored.Apply((from, to) => Cv2.Transpose(from, to));
        return transposed.Apply((from, to) => Cv2.Rotate(from, to, RotateFlags.Rotate180));
    }
}
