using System;
using System.Buffers.Binary;
using System.IO;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Photos;

/// <summary>
/// What goes between the program and the process that decodes for it. A question: what is asked (1 byte), length (4 bytes, little-endian), the file.
/// An answer: width and height (4 bytes each; 0 for "cannot"), then the pixels, or the focal length for the 36 x 24 mm frame (4 bytes, 0 for none).
/// </summary>
internal static class DecoderMessages
{
    internal const byte AskPixels = (byte)'p';
    internal const byte AskHeifPixels = (byte)'h';
    internal const byte AskHeifHeader = (byte)'i';

    private const int Word = sizeof(int);
    private const int Channels = 3;

    internal static void Ask(Stream to, byte what, ReadOnlySpan<byte> file)
    {
        Span<byte> head = stackalloc byte[1 + Word];
        head[0] = what;
        BinaryPrimitives.WriteInt32LittleEndian(head[1..], file.Length);
        to.Write(head);
        to.Write(file);
        to.Flush();
    }

    /// <summary>Reads a question; null where nobody asks any more.</summary>
    internal static (byte What, byte[] File)? Question(Stream from)
    {
        Span<byte> head = stackalloc byte[1 + Word];
        if (from.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) < head.Length)
        {
            return null;
        }

        var file = new byte[BinaryPrimitives.ReadInt32LittleEndian(head[1..])];
        from.ReadExactly(file);
        return (head[0], file);
    }

    internal static void Answer(Stream to, ColourImage? picture)
    {
        Size(to, picture?.Width ?? 0, picture?.Height ?? 0);
        if (picture is not null)
        {
            to.Write(picture.Pixels);
        }

        to.Flush();
    }

    internal static void Answer(Stream to, HeifHeader? header)
    {
        Size(to, header?.Width ?? 0, header?.Height ?? 0);
        if (header is { } known)
        {
            Span<byte> focal = stackalloc byte[Word];
            BinaryPrimitives.WriteInt32LittleEndian(focal, known.EquivalentMillimetres);
            to.Write(focal);
        }

        to.Flush();
    }

    /// <summary>Reads pixels.</summary>
    /// <exception cref="IOException">The answer is cut off.</exception>
    internal static ColourImage? Pixels(Stream from)
    {
        if (Size(from) is not var (width, height))
        {
            return null;
        }

        var pixels = new byte[checked(width * height * Channels)];
        from.ReadExactly(pixels);
        return new ColourImage(width, height, pixels);
    }

    /// <summary>Reads the answer about a header.</summary>
    /// <exception cref="IOException">The answer is cut off.</exception>
    internal static HeifHeader? Header(Stream from)
    {
        if (Size(from) is not var (width, height))
        {
            return null;
        }

        Span<byte> focal = stackalloc byte[Word];
        from.ReadExactly(focal);
        return new HeifHeader(width, height, BinaryPrimitives.ReadInt32LittleEndian(focal));
    }

    private static void Size(Stream to, int width, int height)
    {
        Span<byte> size = stackalloc byte[2 * Word];
        BinaryPrimitives.WriteInt32LittleEndian(size, width);
        BinaryPrimitives.WriteInt32LittleEndian(size[Word..], height);
        to.Write(size);
    }

    private static (int Width, int Height)? Size(Stream from)
    {
        Span<byte> size = stackalloc byte[2 * Word];
        from.ReadExactly(size);
        var (width, height) = (BinaryPrimitives.ReadInt32LittleEndian(size), BinaryPrimitives.ReadInt32LittleEndian(size[Word..]));
        return width > 0 && height > 0 ? (width, height) : null;
    }
}
