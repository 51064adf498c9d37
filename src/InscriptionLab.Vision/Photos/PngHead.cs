using System;
using System.Buffers.Binary;
using System.IO;

namespace InscriptionLab.Vision.Photos;

/// <summary>
/// The part of a PNG (ISO/IEC 15948) that says how large the picture is and what camera made it. Packed words and colour profiles are left out:
/// a megabyte of them may unpack to many gigabytes, and nothing here asks for them.
/// </summary>
internal static class PngHead
{
    /// <summary>Length, name and check sum of a chunk.</summary>
    private const int Frame = 12;

    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Pixels of no length and the end, with their check sums.</summary>
    private static ReadOnlySpan<byte> Tail => [0, 0, 0, 0, (byte)'I', (byte)'D', (byte)'A', (byte)'T', 0x35, 0xAF, 0x06, 0x1E, 0, 0, 0, 0, (byte)'I', (byte)'E', (byte)'N', (byte)'D', 0xAE, 0x42, 0x60, 0x82];

    /// <summary>Gives a PNG of the same header and EXIF data with nothing else in it; null where the file is no PNG.</summary>
    internal static byte[]? Of(ReadOnlySpan<byte> file)
    {
        if (!file.StartsWith(Signature))
        {
            return null;
        }

        using var head = new MemoryStream();
        head.Write(Signature);
        for (var rest = file[Signature.Length..]; rest.Length >= Frame;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(rest);
            if (length > rest.Length - Frame)
            {
                break;
            }

            var chunk = rest[..(Frame + (int)length)];
            var name = chunk.Slice(4, 4);
            if (name.SequenceEqual("IHDR"u8) || name.SequenceEqual("eXIf"u8))
            {
                head.Write(chunk);
            }

            rest = rest[chunk.Length..];
        }

        head.Write(Tail);
        return head.ToArray();
    }
}
