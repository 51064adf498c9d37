using System;
using System.Buffers.Binary;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace InscriptionLab.Benchmarks;

/// <summary>
/// As many photos as asked for from a few samples, without decoding one: each copy carries its number in a comment segment (JPEG, ISO/IEC 10918-1, marker COM),
/// so that no two have the same bytes, though every sample's copies have the same pixels.
/// </summary>
internal static class NumberedPhotos
{
    private const int LengthBytes = 2;
    private static readonly byte[] StartOfImage = [0xFF, 0xD8];
    private static readonly byte[] Comment = [0xFF, 0xFE];

    /// <summary>Fills a folder; photos that are there already stay.</summary>
    /// <returns>Bytes of all photos.</returns>
    internal static long Fill(string folder, int count)
    {
        Directory.CreateDirectory(folder);
        var samples = Directory.GetFiles(Samples.Folder, "*.jpg").Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToList();
        long bytes = 0;
        for (var number = 0; number < count; number++)
        {
            var file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{number:0000000}.jpg"));
            if (!File.Exists(file))
            {
                File.WriteAllBytes(file, Numbered(samples[number % samples.Count], number));
            }

            bytes += new FileInfo(file).Length;
        }

        return bytes;
    }

    private static byte[] Numbered(byte[] sample, int number)
    {
        if (!sample.AsSpan().StartsWith(StartOfImage))
        {
            throw new InvalidOperationException("A sample is no JPEG file.");
        }

        var text = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"copy {number}"));
        var length = new byte[LengthBytes];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(LengthBytes + text.Length));
        return [.. StartOfImage, .. Comment, .. length, .. text, .. sample.AsSpan(StartOfImage.Length)];
    }
}
