using System;
using System.Buffers.Binary;
using System.IO;
using System.IO.Compression;
using System.IO.Hashing;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Likeness;

/// <summary>Writes and reads grey pictures as PNG files (W3C Portable Network Graphics, 8 bits a pixel, not interlaced).</summary>
public static class GrayPng
{
    private const int HeaderLength = 13;
    private const byte EightBits = 8;
    private const int MostPixels = 64 * 1024 * 1024;
    private const byte FilterNone = 0;
    private const byte FilterUp = 2;

    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Gives the PNG file of a picture; the same picture always gives the same bytes.</summary>
    public static byte[] Write(GrayImage image)
    {
        ArgumentNullException.ThrowIfNull(image);
        using var file = new MemoryStream();
        file.Write(Signature);
        Span<byte> header = stackalloc byte[HeaderLength];
        BinaryPrimitives.WriteInt32BigEndian(header, image.Width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], image.Height);
        header[8] = EightBits;
        WriteChunk(file, "IHDR"u8, header);
        WriteChunk(file, "IDAT"u8, Packed(image));
        WriteChunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    /// <summary>Reads a PNG file that <see cref="Write"/> made.</summary>
    /// <exception cref="InscriptionLabException">The file is damaged or was not made here.</exception>
    public static GrayImage Read(ReadOnlySpan<byte> png)
    {
        if (!png.StartsWith(Signature) || png.Length < Signature.Length + HeaderLength + 12)
        {
            throw Damaged();
        }

        int width = 0, height = 0;
        using var packed = new MemoryStream();
        for (var rest = png[Signature.Length..]; rest.Length >= 12;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(rest);
            if (length < 0 || length > rest.Length - 12)
            {
                throw Damaged();
            }

            var content = rest.Slice(8, length);
            if (Crc32.HashToUInt32(rest.Slice(4, length + 4)) != BinaryPrimitives.ReadUInt32BigEndian(rest[(8 + length)..]))
            {
                throw Damaged();
            }

            if (rest.Slice(4, 4).SequenceEqual("IHDR"u8) && length == HeaderLength)
            {
                (width, height) = (BinaryPrimitives.ReadInt32BigEndian(content), BinaryPrimitives.ReadInt32BigEndian(content[4..]));
            }
            else if (rest.Slice(4, 4).SequenceEqual("IDAT"u8))
            {
                packed.Write(content);
            }

            rest = rest[(length + 12)..];
        }

        return Unpacked(packed, width, height);
    }

    private static byte[] Packed(GrayImage image)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.Optimal))
        {
            var row = new byte[image.Width + 1];
            for (var y = 0; y < image.Height; y++)
            {
                row[0] = y == 0 ? FilterNone : FilterUp;
                for (var x = 0; x < image.Width; x++)
                {
                    row[x + 1] = unchecked((byte)(image[x, y] - (y == 0 ? 0 : image[x, y - 1])));
                }

                deflate.Write(row);
            }
        }

        return packed.ToArray();
    }

    private static GrayImage Unpacked(MemoryStream packed, int width, int height)
    {
        if (width <= 0 || height <= 0 || (long)width * height > MostPixels)
        {
            throw Damaged();
        }

        packed.Position = 0;
        using var inflate = new ZLibStream(packed, CompressionMode.Decompress);
        var pixels = new byte[width * height];
        var row = new byte[width + 1];
        for (var y = 0; y < height; y++)
        {
            if (!IsFull(inflate, row))
            {
                throw Damaged();
            }

            for (var x = 0; x < width; x++)
            {
                var above = row[0] == FilterUp && y > 0 ? pixels[((y - 1) * width) + x] : 0;
                pixels[(y * width) + x] = unchecked((byte)(row[x + 1] + above));
            }
        }

        return new GrayImage(width, height, pixels);
    }

    private static bool IsFull(ZLibStream inflate, byte[] row)
    {
        try
        {
            return inflate.ReadAtLeast(row, row.Length, throwOnEndOfStream: false) == row.Length;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static InscriptionLabException Damaged() => new("The picture of a line in the catalogue is damaged: look for damage with ./lab catalogue check.");

    private static void WriteChunk(MemoryStream file, ReadOnlySpan<byte> kind, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        var crc = new Crc32();
        crc.Append(kind);
        crc.Append(content);
        file.Write(kind);
        file.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, crc.GetCurrentHashAsUInt32());
        file.Write(number);
    }
}
