using System;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Photos;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Photos;

public sealed class PhotoReaderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("photo-reader").FullName;
    private readonly PhotoReader _reader = new(new PhotoLimits());

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_photo_keeps_its_pixels_and_its_hash()
    {
        var file = Write("plain.png", Picture(".png"));
        var photo = _reader.Read(file);
        Assert.Equal((96, 64), (photo.Colour.Width, photo.Colour.Height));
        Assert.Equal(255, photo.Colour.Pixels[((5 * 96) + 7) * 3 + 2]);
        Assert.Equal(64, photo.Sha256.Length);
        Assert.Equal(photo.Sha256, _reader.Read(file).Sha256);
    }

    /// <summary>The red mark stands at stored (7, 5); where each EXIF orientation (CIPA DC-008) shows it follows from the tag's definition.</summary>
    [Theory]
    [InlineData(1, 96, 64, 7, 5)]
    [InlineData(2, 96, 64, 88, 5)]
    [InlineData(3, 96, 64, 88, 58)]
    [InlineData(4, 96, 64, 7, 58)]
    [InlineData(5, 64, 96, 5, 7)]
    [InlineData(6, 64, 96, 58, 7)]
    [InlineData(7, 64, 96, 58, 88)]
    [InlineData(8, 64, 96, 5, 88)]
    public void Each_orientation_tag_is_applied_once(int orientation, int width, int height, int x, int y)
    {
        var photo = _reader.Read(Write("turned.jpg", WithOrientation(Picture(".jpg"), orientation)));
        Assert.Equal((width, height), (photo.Colour.Width, photo.Colour.Height));
        var pixel = photo.Colour.Pixels.Slice(((y * width) + x) * 3, 3);
        Assert.True(pixel[2] > 150 && pixel[0] < 120, $"the mark is not at ({x}, {y}): {pixel[0]}, {pixel[1]}, {pixel[2]}");
        Assert.Equal(orientation, photo.Lens.Orientation);
    }

    [Fact]
    public void A_picture_longer_than_can_be_resampled_is_refused() =>
        Refused(Write("long.png", PhotoFiles.Png(33000, 20, 8, PhotoFiles.PngColour.Grey, new byte[33000], 20)), "33000 pixels long");

    [Fact]
    public void A_truncated_jpeg_is_refused_at_every_length()
    {
        using var noise = new Mat(480, 640, MatType.CV_8UC3);
        Cv2.SetTheRNG(1);
        Cv2.Randu(noise, new Scalar(0, 0, 0), new Scalar(255, 255, 255));
        var whole = noise.ToBytes(".jpg");
        for (var percent = 1; percent <= 95; percent += 6)
        {
            var file = Write($"cut{percent}.jpg", whole.Take(whole.Length * percent / 100).ToArray());
            Refused(file, percent > 5 ? "damaged" : "picture");
        }
    }

    [Fact]
    public void Zero_bytes_are_refused() => Refused(Write("empty.jpg", []), "empty");

    [Fact]
    public void Text_is_refused() => Refused(Write("text.jpg", "this is no picture, only words"u8.ToArray()), "not a picture");

    [Fact]
    public void A_missing_file_is_refused() => Refused(Path.Combine(_folder, "nowhere.jpg"), "no such file");

    [Fact]
    public void A_folder_is_refused() => Refused(_folder, "folder");

    [Fact]
    public void One_pixel_is_refused()
    {
        using var dot = new Mat(1, 1, MatType.CV_8UC3, new Scalar(1, 2, 3));
        Refused(Write("dot.png", dot.ToBytes(".png")), "only 1 x 1");
    }

    /// <summary>A PNG header that claims 30000 x 30000 pixels (PNG specification, IHDR chunk with its CRC-32) is refused from the header alone.</summary>
    [Fact]
    public void A_header_of_thirty_thousand_pixels_a_side_is_refused()
    {
        var bytes = Picture(".png");
        bytes[16] = 0;
        bytes[17] = 0;
        bytes[18] = 0x75;
        bytes[19] = 0x30;
        bytes.AsSpan(16, 4).CopyTo(bytes.AsSpan(20));
        System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(bytes.AsSpan(29), Crc32(bytes.AsSpan(12, 17)));
        Refused(Write("huge.png", bytes), "30000 x 30000");
    }

    [Fact]
    public void No_native_picture_outlives_the_reading()
    {
        var file = Write("leak.png", Picture(".png"));
        _reader.Read(file);
        var before = NativeImage.Alive;
        for (var i = 0; i < 5; i++)
        {
            _reader.Read(file);
        }

        Assert.True(NativeImage.Alive <= before + 1, "native pictures pile up");
    }

    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
            }
        }

        return ~crc;
    }

    private static byte[] Picture(string format)
    {
        using var picture = new Mat(64, 96, MatType.CV_8UC3, new Scalar(200, 190, 180));
        Cv2.Rectangle(picture, new Rect(3, 1, 9, 9), new Scalar(0, 0, 255), -1);
        return picture.ToBytes(format);
    }

    /// <summary>Puts a minimal EXIF segment (TIFF, one entry, tag 0x0112) behind the start marker of a JPEG.</summary>
    private static byte[] WithOrientation(byte[] jpeg, int orientation)
    {
        byte[] segment =
        [
            0xFF, 0xE1, 0, 34, (byte)'E', (byte)'x', (byte)'i', (byte)'f', 0, 0, (byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8,
            0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0,
        ];
        return [.. jpeg.Take(2), .. segment, .. jpeg.Skip(2)];
    }

    private string Write(string name, byte[] bytes)
    {
        var file = Path.Combine(_folder, name);
        File.WriteAllBytes(file, bytes);
        return file;
    }

    private void Refused(string file, string word)
    {
        var exception = Assert.Throws<InscriptionLabException>(() => _reader.Read(file));
        Assert.Contains(word, exception.Message, StringComparison.Ordinal);
        Assert.Contains(file, exception.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', exception.Message);
    }
}
