using System.Buffers.Binary;
using System.Collections.Generic;
using System.IO;
using System.IO.Compression;
using System.IO.Hashing;
using System.Linq;
using System.Text;

namespace InscriptionLab.Vision.Tests.Photos;

/// <summary>Picture files put together byte by byte, as their standards describe them and as no honest program would write them.</summary>
internal static class PhotoFiles
{
    internal enum PngColour : byte
    {
        Grey = 0,
        Rgb = 2,
        Palette = 3,
        GreyAlpha = 4,
        RgbAlpha = 6,
    }

    /// <summary>A PNG (ISO/IEC 15948).</summary>
    /// <param name="width">Columns that the header claims.</param>
    /// <param name="height">Rows that the header claims.</param>
    /// <param name="bits">Bits a sample.</param>
    /// <param name="colour">Kind of pixels.</param>
    /// <param name="row">Bytes of one row, without its filter byte; every row is this one.</param>
    /// <param name="rows">Rows that are there.</param>
    /// <param name="before">Chunks before the pixels.</param>
    internal static byte[] Png(int width, int height, byte bits, PngColour colour, byte[] row, int rows, params (string Name, byte[] Data)[] before)
    {
        using var file = new MemoryStream();
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        Chunk(file, "IHDR", [.. BigEndian(width), .. BigEndian(height), bits, (byte)colour, 0, 0, 0]);
        foreach (var (name, data) in before)
        {
            Chunk(file, name, data);
        }

        Chunk(file, "IDAT", Packed(Enumerable.Repeat<byte[]>([0, .. row], rows).SelectMany(one => one)));
        Chunk(file, "IEND", []);
        return file.ToArray();
    }

    internal static byte[] Packed(IEnumerable<byte> bytes)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            deflate.Write(bytes.ToArray());
        }

        return packed.ToArray();
    }

    /// <summary>One entry of a TIFF directory (TIFF 6.0, section 2).</summary>
    /// <param name="Tag">Tag.</param>
    /// <param name="Kind">Type: 1 byte, 2 text, 3 short, 4 long, 5 rational.</param>
    /// <param name="Count">How many values it claims.</param>
    /// <param name="Value">The value, or where the values lie.</param>
    internal readonly record struct Entry(ushort Tag, ushort Kind, uint Count, uint Value);

    /// <summary>The bytes of a TIFF structure, little-endian: header, one directory, what follows it.</summary>
    /// <param name="next">Where the next directory lies; 0 for none.</param>
    /// <param name="behind">What lies behind the directory; it begins at <see cref="Behind"/>.</param>
    /// <param name="entries">The directory.</param>
    internal static byte[] Tiff(uint next, byte[] behind, params Entry[] entries)
    {
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file);
        writer.Write("II*\0"u8);
        writer.Write(8u);
        writer.Write((ushort)entries.Length);
        foreach (var entry in entries)
        {
            writer.Write(entry.Tag);
            writer.Write(entry.Kind);
            writer.Write(entry.Count);
            writer.Write(entry.Value);
        }

        writer.Write(next);
        writer.Write(behind);
        writer.Flush();
        return file.ToArray();
    }

    /// <summary>Where the bytes behind a directory of so many entries begin.</summary>
    internal static uint Behind(int entries) => (uint)(8 + 2 + (12 * entries) + 4);

    /// <summary>Puts a segment behind the start marker of a JPEG (ITU-T T.81).</summary>
    internal static byte[] WithSegment(byte[] jpeg, byte marker, byte[] data)
    {
        var length = data.Length + 2;
        return [.. jpeg.Take(2), 0xFF, marker, (byte)(length >> 8), (byte)length, .. data, .. jpeg.Skip(2)];
    }

    /// <summary>Puts an EXIF structure into a JPEG (CIPA DC-008).</summary>
    internal static byte[] WithExif(byte[] jpeg, byte[] tiff) => WithSegment(jpeg, 0xE1, [.. "Exif\0\0"u8, .. tiff]);

    internal static byte[] BigEndian(int number)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, number);
        return bytes;
    }

    internal static void Chunk(Stream file, string name, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(name), .. data];
        file.Write(BigEndian(data.Length));
        file.Write(body);
        file.Write(BigEndian(unchecked((int)Crc32.HashToUInt32(body))));
    }
}
