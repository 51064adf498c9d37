using System;
using System.Collections.Immutable;
using System.IO;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats;
using SixLabors.ImageSharp.Formats.Bmp;
using SixLabors.ImageSharp.Formats.Gif;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Tiff;
using SixLabors.ImageSharp.Formats.Webp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;

namespace InscriptionLab.Fuzz;

/// <summary>One small photo of each format, with the metadata that the program looks at.</summary>
internal static class Photos
{
    private const int Width = 24;
    private const int Height = 20;

    /// <summary>Gets the files.</summary>
    internal static ImmutableArray<byte[]> All =>
    [
        .. Array.ConvertAll<IImageEncoder, byte[]>(
            [new JpegEncoder { Quality = 60 }, new PngEncoder(), new GifEncoder(), new TiffEncoder(), new WebpEncoder(), new BmpEncoder()],
            Encoded),
    ];

    private static byte[] Encoded(IImageEncoder encoder)
    {
        using var picture = new Image<Rgb24>(Width, Height);
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                picture[x, y] = new Rgb24((byte)(x * 10), (byte)(y * 12), (byte)(x * y));
            }
        }

        var exif = new ExifProfile();
        exif.SetValue(ExifTag.Orientation, (ushort)6);
        exif.SetValue(ExifTag.FocalLengthIn35mmFilm, (ushort)50);
        exif.SetValue(ExifTag.FocalLength, new Rational(35, 1));
        picture.Metadata.ExifProfile = exif;
        using var file = new MemoryStream();
        picture.Save(file, encoder);
        return file.ToArray();
    }
}
