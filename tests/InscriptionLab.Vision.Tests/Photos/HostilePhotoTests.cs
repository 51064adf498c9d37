using System;
using System.Buffers.Binary;
using System.Diagnostics;
using System.IO;
using System.Linq;
using ImageMagick;
using OpenCvSharp;
using Xunit;
using static InscriptionLab.Vision.Tests.Photos.PhotoFiles;

namespace InscriptionLab.Vision.Tests.Photos;

/// <summary>Files made to do harm: each is refused with one sentence, or decoded within ordinary memory, whatever its header claims.</summary>
public sealed class HostilePhotoTests : IDisposable
{
    private const long ManyBytes = 64L * 1024 * 1024;

    private readonly PhotoFolder _folder = new();

    public static TheoryData<string> Formats => [".jpg", ".png", ".bmp", ".tif", ".webp", ".gif", ".avif"];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("png")]
    [InlineData("gif")]
    [InlineData("tif")]
    [InlineData("bmp")]
    [InlineData("jpg")]
    [InlineData("webp")]
    public void A_small_file_that_claims_to_be_huge_is_refused_from_its_header(string kind)
    {
        var bytes = kind switch
        {
            "png" => Png(60000, 60000, 8, PngColour.Rgb, new byte[180000], 1),
            "gif" => [.. "GIF89a"u8, 0x60, 0xEA, 0x60, 0xEA, 0, 0, 0, 0x2C, 0, 0, 0, 0, 0x60, 0xEA, 0x60, 0xEA, 0, 2, 2, 0x4C, 1, 0, 0x3B],
            "tif" => Tiff(0, new byte[8], [new Entry(256, 4, 1, 60000), new Entry(257, 4, 1, 60000), new Entry(258, 3, 1, 8), new Entry(259, 3, 1, 1), new Entry(262, 3, 1, 1), new Entry(273, 4, 1, 8), new Entry(277, 3, 1, 1), new Entry(278, 4, 1, 60000), new Entry(279, 4, 1, 8)]),
            "bmp" => Claiming(Encoded(".bmp"), 18, 60000),
            "jpg" => ClaimingJpeg(Encoded(".jpg"), 65000),
            _ => ClaimingWebP(),
        };

        var before = GC.GetTotalAllocatedBytes();
        var sentence = _folder.Refused(_folder.Write("claims." + kind, bytes));
        Assert.True(GC.GetTotalAllocatedBytes() - before < ManyBytes, "memory was taken for a picture that is refused");
        Assert.True(sentence.Contains("million", StringComparison.Ordinal) || sentence.Contains("damaged", StringComparison.Ordinal), sentence);
    }

    /// <summary>Text or a colour profile of a gigabyte, packed into a megabyte, in front of an honest picture.</summary>
    [Theory]
    [InlineData("zTXt")]
    [InlineData("iTXt")]
    [InlineData("iCCP")]
    public void Packed_words_of_a_gigabyte_are_not_unpacked(string chunk)
    {
        byte[] head = chunk == "iTXt" ? [.. "Comment\0"u8, 1, 0, 0, 0] : [.. "Comment\0"u8, 0];
        var bytes = Png(20, 20, 8, PngColour.Grey, new byte[20], 20, (chunk, [.. head, .. Gigabyte.Value]));
        var before = GC.GetTotalAllocatedBytes();
        _folder.IsTaken("words.png", bytes);
        Assert.True(GC.GetTotalAllocatedBytes() - before < ManyBytes, $"{(GC.GetTotalAllocatedBytes() - before) / 1024 / 1024} MiB were taken");
    }

    [Fact]
    public void The_orientation_of_a_png_is_still_read()
    {
        var turned = Png(40, 20, 8, PngColour.Grey, new byte[40], 20, ("eXIf", Tiff(0, [], new Entry(0x0112, 3, 1, 6))));
        Assert.Equal((20, 40), _folder.Read("turned.png", turned).Colour is var picture ? (picture.Width, picture.Height) : default);
    }

    [Fact]
    public void A_directory_that_leads_back_to_itself_is_left_after_one_round()
    {
        var jpeg = Encoded(".jpg");
        foreach (var tiff in new[]
        {
            Tiff(8, [], new Entry(0x0112, 3, 1, 1)),
            Tiff(0, [], new Entry(0x8769, 4, 1, 8)),
            Tiff(8, [], new Entry(0x8769, 4, 1, 8), new Entry(0x8825, 4, 1, 8), new Entry(0x014A, 4, 1, 8)),
        })
        {
            Assert.True(_folder.IsTaken("loop.jpg", WithExif(jpeg, tiff)));
        }

        _folder.IsTaken("loop.tif", Tiff(8, [], new Entry(256, 4, 1, 20), new Entry(257, 4, 1, 20), new Entry(258, 3, 1, 8), new Entry(262, 3, 1, 1), new Entry(273, 4, 1, 8), new Entry(278, 4, 1, 20), new Entry(279, 4, 1, 400)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(12)]
    public void A_tag_that_claims_thousands_of_millions_of_values_costs_no_memory(int kind)
    {
        var tiff = Tiff(0, new byte[16], new Entry(0x010F, (ushort)kind, uint.MaxValue, 26), new Entry(0x0112, 3, 1, 1), new Entry(0x927C, (ushort)kind, 0x7FFFFFFF, 26));
        var before = GC.GetTotalAllocatedBytes();
        _folder.IsTaken("counts.jpg", WithExif(Encoded(".jpg"), tiff));
        Assert.True(GC.GetTotalAllocatedBytes() - before < ManyBytes);
    }

    [Fact]
    public void A_broken_colour_profile_costs_nothing()
    {
        byte[] profile = [.. "ICC_PROFILE\0"u8, 1, 1, 0xFF, 0xFF, 0xFF, 0xFF, .. new byte[140]];
        Assert.True(_folder.IsTaken("profile.jpg", WithSegment(Encoded(".jpg"), 0xE2, profile)));
        Assert.True(_folder.IsTaken("part-of-none.jpg", WithSegment(Encoded(".jpg"), 0xE2, [.. "ICC_PROFILE\0"u8, 9, 2, 1, 2, 3])));
        Assert.True(_folder.IsTaken("profile.png", Png(20, 20, 8, PngColour.Grey, new byte[20], 20, ("iCCP", [.. "x\0\0"u8, 1, 2, 3, 4]))));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_file_cut_off_anywhere_is_refused(string format)
    {
        var whole = Encoded(format);
        Assert.True(_folder.IsTaken("whole" + format, whole));
        int[] taken = [.. Enumerable.Range(1, 19).Where(part => _folder.IsTaken($"cut{part}{format}", whole[..(whole.Length * part / 20)]))];
        Assert.Empty(taken);
    }

    [Fact]
    public void What_is_no_file_of_bytes_is_refused()
    {
        _folder.Refused("/dev/zero");
        _folder.Refused("/dev/null");
        var pipe = _folder.PathOf("pipe.jpg");
        using (var made = Process.Start("mkfifo", [pipe]))
        {
            made.WaitForExit();
        }

        _folder.Refused(pipe);
        File.CreateSymbolicLink(_folder.PathOf("a.jpg"), _folder.PathOf("b.jpg"));
        File.CreateSymbolicLink(_folder.PathOf("b.jpg"), _folder.PathOf("a.jpg"));
        _folder.Refused(_folder.PathOf("a.jpg"));
    }

    private static readonly Lazy<byte[]> Gigabyte = new(() =>
    {
        using var packed = new MemoryStream();
        using (var deflate = new System.IO.Compression.ZLibStream(packed, System.IO.Compression.CompressionLevel.Fastest, leaveOpen: true))
        {
            var zeros = new byte[1024 * 1024];
            for (var i = 0; i < 1024; i++)
            {
                deflate.Write(zeros);
            }
        }

        return packed.ToArray();
    });

    private static byte[] Encoded(string format)
    {
        using var noise = new Mat(48, 64, MatType.CV_8UC3);
        Cv2.SetTheRNG(3);
        Cv2.Randu(noise, new Scalar(0, 0, 0), new Scalar(255, 255, 255));
        var png = noise.ToBytes(format is ".gif" or ".avif" ? ".png" : format);
        if (format is not (".gif" or ".avif"))
        {
            return png;
        }

        using var picture = new MagickImage(png);
        return picture.ToByteArray(format == ".gif" ? MagickFormat.Gif : MagickFormat.Avif);
    }

    private static byte[] Claiming(byte[] bytes, int at, int side)
    {
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(at), side);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(at + 4), side);
        return bytes;
    }

    /// <summary>Writes the sides into the frame header of a JPEG (ITU-T T.81, B.2.2).</summary>
    private static byte[] ClaimingJpeg(byte[] bytes, ushort side)
    {
        var frame = bytes.AsSpan().IndexOf(new byte[] { 0xFF, 0xC0 });
        BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(frame + 5), side);
        BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(frame + 7), side);
        return bytes;
    }

    /// <summary>A WebP (RFC 9649) whose extended header claims the largest canvas there is.</summary>
    private static byte[] ClaimingWebP()
    {
        byte[] canvas = [.. "VP8X"u8, 10, 0, 0, 0, 0, 0, 0, 0, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x00];
        var picture = Encoded(".webp")[12..];
        byte[] body = [.. "WEBP"u8, .. canvas, .. picture];
        var length = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, body.Length);
        return [.. "RIFF"u8, .. length, .. body];
    }
}
