using System;
using System.IO;
using System.Linq;
using ImageMagick;
using OpenCvSharp;
using Xunit;
using static InscriptionLab.Vision.Tests.Photos.PhotoFiles;

namespace InscriptionLab.Vision.Tests.Photos;

/// <summary>Unusual kinds of pixels come out with the values that their standards give them.</summary>
public sealed class KindsOfPixelsTests : IDisposable
{
    private const int Side = 20;

    private readonly PhotoFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Sixteen_bits_keep_their_upper_eight()
    {
        var grey = Png(Side, Side, 16, PngColour.Grey, Repeated([0x80, 0x40]), Side);
        Assert.Equal((128, 128, 128), _folder.PixelOf("grey16.png", grey, 7, 7));
        var rgb = Png(Side, Side, 16, PngColour.Rgb, Repeated([200, 0, 100, 0, 50, 0]), Side);
        Assert.Equal((200, 100, 50), _folder.PixelOf("rgb16.png", rgb, 7, 7));
    }

    [Fact]
    public void A_palette_gives_its_colours()
    {
        byte[] palette = [10, 20, 30, 250, 240, 230];
        var picture = Png(Side, Side, 8, PngColour.Palette, Repeated([1]), Side, ("PLTE", palette));
        Assert.Equal((250, 240, 230), _folder.PixelOf("palette.png", picture, 3, 3));
        var oneBit = Png(Side, Side, 1, PngColour.Palette, [0b0101_0101, 0b0101_0101, 0b0101_0000], Side, ("PLTE", palette));
        Assert.Equal((10, 20, 30), _folder.PixelOf("bits.png", oneBit, 2, 2));
        Assert.Equal((250, 240, 230), _folder.PixelOf("bits.png", oneBit, 3, 2));
    }

    [Fact]
    public void Transparency_is_left_out_and_the_colour_below_it_kept()
    {
        Assert.Equal((90, 90, 90), _folder.PixelOf("grey-alpha.png", Png(Side, Side, 8, PngColour.GreyAlpha, Repeated([90, 128]), Side), 3, 3));
        Assert.Equal((90, 80, 70), _folder.PixelOf("alpha.png", Png(Side, Side, 8, PngColour.RgbAlpha, Repeated([90, 80, 70, 255]), Side), 3, 3));
    }

    /// <summary>Colours and their inks: each ink takes its share of light away, black from all three (C = 1 - R for full light).</summary>
    [Theory]
    [InlineData(255, 255, 255)]
    [InlineData(200, 40, 40)]
    [InlineData(40, 160, 60)]
    [InlineData(30, 30, 30)]
    public void Inks_become_light(byte red, byte green, byte blue)
    {
        using var picture = new MagickImage(MagickColor.FromRgb(red, green, blue), 32, 32) { ColorSpace = ColorSpace.CMYK, Quality = 95 };
        var jpeg = picture.ToByteArray(MagickFormat.Jpeg);
        Assert.True(jpeg.AsSpan().IndexOf("Adobe"u8) > 0, "the file lacks the mark of inverted inks");
        var (r, g, b) = _folder.PixelOf("inks.jpg", jpeg, 9, 9);
        Assert.True(Math.Abs(r - red) <= 6 && Math.Abs(g - green) <= 6 && Math.Abs(b - blue) <= 6, $"{r}, {g}, {b}");
    }

    [Fact]
    public void A_progressive_jpeg_is_the_same_picture_as_a_plain_one()
    {
        using var noise = new Mat(48, 64, MatType.CV_8UC3);
        Cv2.SetTheRNG(7);
        Cv2.Randu(noise, new Scalar(0, 0, 0), new Scalar(255, 255, 255));
        var plain = _folder.Read("plain.jpg", noise.ToBytes(".jpg", new ImageEncodingParam(ImwriteFlags.JpegProgressive, 0)));
        var progressive = _folder.Read("progressive.jpg", noise.ToBytes(".jpg", new ImageEncodingParam(ImwriteFlags.JpegProgressive, 1)));
        Assert.True(plain.Colour.Pixels.SequenceEqual(progressive.Colour.Pixels));
    }

    [Fact]
    public void A_tiff_of_sixteen_bits_keeps_their_upper_eight()
    {
        byte[] pixels = [.. Repeated([0x34, 0x80], Side * Side)];
        Assert.Equal((128, 128, 128), _folder.PixelOf("grey16.tif", GreyTiff(Side, Side, 16, 0, pixels), 4, 4));
    }

    [Fact]
    public void Of_several_pages_or_frames_the_first_is_taken()
    {
        var second = GreyTiff(Side, Side, 8, 0, [.. Repeated([200], Side * Side)]);
        byte[] pages = [.. GreyTiff(Side, Side, 8, 0, [.. Repeated([50], Side * Side)])];
        var next = (uint)pages.Length;
        pages = [.. GreyTiff(Side, Side, 8, next, [.. Repeated([50], Side * Side)]), .. Moved(second, next)];
        Assert.Equal((50, 50, 50), _folder.PixelOf("pages.tif", pages, 4, 4));
        using var frames = new MagickImageCollection { new MagickImage(MagickColor.FromRgb(255, 0, 0), 32, 32), new MagickImage(MagickColor.FromRgb(0, 0, 255), 32, 32) };
        Assert.Equal((255, 0, 0), _folder.PixelOf("moving.gif", frames.ToByteArray(MagickFormat.Gif), 4, 4));
        Assert.Contains("moving", _folder.Refused(_folder.Write("moving.webp", frames.ToByteArray(MagickFormat.WebP))), StringComparison.Ordinal);
    }

    /// <summary>An APNG (W3C Portable Network Graphics, third edition) of two frames: a reader of still pictures shows what stands in IDAT.</summary>
    [Fact]
    public void A_moving_png_shows_its_still_picture()
    {
        byte[] frame = [.. BigEndian(0), .. BigEndian(Side), .. BigEndian(Side), .. BigEndian(0), .. BigEndian(0), 0, 1, 0, 10, 0, 0];
        byte[] other = [.. BigEndian(2), .. Packed(Enumerable.Repeat<byte[]>([0, .. Repeated([200])], Side).SelectMany(row => row))];
        var picture = Png(Side, Side, 8, PngColour.Grey, Repeated([60]), Side, ("acTL", [.. BigEndian(2), .. BigEndian(0)]), ("fcTL", frame));
        var end = picture.AsSpan().LastIndexOf("IEND"u8) - 4;
        using var file = new MemoryStream();
        file.Write(picture.AsSpan(0, end));
        Chunk(file, "fcTL", [.. BigEndian(1), .. frame.Skip(4)]);
        Chunk(file, "fdAT", other);
        file.Write(picture.AsSpan(end));
        Assert.Equal((60, 60, 60), _folder.PixelOf("moving.png", file.ToArray(), 5, 5));
    }

    [Theory]
    [InlineData(".jpg")]
    [InlineData(".tif")]
    [InlineData(".txt")]
    [InlineData("")]
    public void The_name_says_nothing_of_the_kind_of_file(string ending) =>
        Assert.Equal((9, 9, 9), _folder.PixelOf("named" + ending, Png(Side, Side, 8, PngColour.Grey, Repeated([9]), Side), 1, 1));

    private static byte[] Repeated(byte[] pixel, int times = Side) => [.. Enumerable.Repeat(pixel, times).SelectMany(one => one)];

    /// <summary>A grey TIFF 6.0 in one strip, not packed.</summary>
    private static byte[] GreyTiff(int width, int height, ushort bits, uint next, byte[] pixels)
    {
        const int Entries = 8;
        return Tiff(
            next,
            pixels,
            new Entry(256, 4, 1, (uint)width),
            new Entry(257, 4, 1, (uint)height),
            new Entry(258, 3, 1, bits),
            new Entry(259, 3, 1, 1),
            new Entry(262, 3, 1, 1),
            new Entry(273, 4, 1, Behind(Entries)),
            new Entry(278, 4, 1, (uint)height),
            new Entry(279, 4, 1, (uint)pixels.Length));
    }

    /// <summary>The directory and pixels of a TIFF as they stand so far into another file, without their header of 8 bytes in force.</summary>
    private static byte[] Moved(byte[] tiff, uint at)
    {
        // The directory begins 8 bytes in; the offset of the strip is told anew.
        var moved = tiff[8..];
        var strip = Behind(8) - 8 + at;
        BitConverter.TryWriteBytes(moved.AsSpan(2 + (5 * 12) + 8), strip);
        return moved;
    }
}
