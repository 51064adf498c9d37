using System;
using System.IO;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;

namespace InscriptionLab.Vision.Photos;

/// <summary>Reads size, orientation and lens data from a file's header; decodes no pixel.</summary>
internal static class HeaderReader
{
    /// <summary>Diagonal of the 36 x 24 mm frame, to which a 35 mm equivalent focal length refers (CIPA DCG-001, from memory).</summary>
    private const double FullFrameDiagonalMillimetres = 43.2666;

    /// <summary>Reads the header.</summary>
    /// <param name="file">Name for messages.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="decoder">What understands HEIC and AVIF.</param>
    /// <exception cref="InscriptionLabException">The file is no picture this program knows, or its header is damaged.</exception>
    internal static PhotoHeader Read(string file, byte[] bytes, IPictureDecoder decoder) => IsHeif(bytes) ? ReadHeif(file, bytes, decoder) : ReadCommon(file, bytes);

    private static bool IsHeif(ReadOnlySpan<byte> bytes)
    {
        // ISO/IEC 14496-12: bytes 4-7 are "ftyp", bytes 8-11 the major brand; HEIF brands from ISO/IEC 23008-12, AVIF from its AOM specification.
        if (bytes.Length < 12 || !bytes[4..8].SequenceEqual("ftyp"u8))
        {
            return false;
        }

        var brand = bytes[8..12];
        return brand.SequenceEqual("heic"u8) || brand.SequenceEqual("heix"u8) || brand.SequenceEqual("hevc"u8) || brand.SequenceEqual("heim"u8)
            || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("msf1"u8) || brand.SequenceEqual("avif"u8) || brand.SequenceEqual("avis"u8);
    }

    private static PhotoHeader ReadCommon(string file, byte[] bytes)
    {
        IImageInfo? info;
        try
        {
            using var stream = new MemoryStream(PngHead.Of(bytes) ?? bytes, writable: false);
            info = Image.Identify(stream);
        }
        catch (NotSupportedException exception)
        {
            throw new InscriptionLabException($"{file}: this kind of picture (a moving or a rare one) cannot be read; save it as JPEG or PNG and give that.", exception);
        }
#pragma warning disable CA1031 // The header parser is known to throw more than its own exceptions on damaged files; each of them means the same here.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            throw new InscriptionLabException($"{file}: the header is damaged; save or download the photo again.", exception);
        }

        if (info is null)
        {
            throw new InscriptionLabException($"{file}: this is not a picture that can be read; give a JPEG, PNG, WebP, TIFF, BMP, HEIC or AVIF file.");
        }

        return new PhotoHeader(info.Width, info.Height, Lens(info), false, false)
        {
            JpegQuality = Image.DetectFormat(bytes) is JpegFormat ? info.Metadata.GetJpegMetadata().Quality : null,
        };
    }

    /// <summary>Reads what is written of camera and lens. Damage there costs these facts and not the photo: a picture whose pixels are whole is taken as upright, without a lens.</summary>
    private static LensFacts Lens(IImageInfo info)
    {
        try
        {
            var exif = info.Metadata.ExifProfile;
            return Lens(
                info.Width,
                info.Height,
                exif?.GetValue(ExifTag.Orientation)?.Value ?? 1,
                exif?.GetValue(ExifTag.FocalLengthIn35mmFilm)?.Value ?? 0);
        }
#pragma warning disable CA1031 // The tags are parsed when first asked for, by the same parser as above.
        catch (Exception)
#pragma warning restore CA1031
        {
            return Lens(info.Width, info.Height, 1, 0);
        }
    }

    private static PhotoHeader ReadHeif(string file, byte[] bytes, IPictureDecoder decoder) => decoder.Header(bytes) is { } heif
        ? new PhotoHeader(heif.Width, heif.Height, Lens(heif.Width, heif.Height, 1, heif.EquivalentMillimetres), true, true)
        : throw new InscriptionLabException($"{file}: the HEIC or AVIF file is damaged; export the photo as JPEG and give that.");

    private static LensFacts Lens(int width, int height, int orientation, int equivalent)
    {
        PixelLength? focal = equivalent > 0
            ? PixelLength.FromPixels(equivalent / FullFrameDiagonalMillimetres * Math.Sqrt(((double)width * width) + ((double)height * height)))
            : null;
        return new LensFacts(focal, orientation is >= 1 and <= 8 ? orientation : 1);
    }
}
