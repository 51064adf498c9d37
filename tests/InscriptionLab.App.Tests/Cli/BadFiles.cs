using System;
using System.Buffers.Binary;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Text;

namespace InscriptionLab.App.Tests.Cli;

/// <summary>Files that no photo can be got from, each made in a folder of the test's.</summary>
internal static class BadFiles
{
    internal static string NotAPicture(TemporaryFolder folder) => Write(folder, "letter.jpg", "Dear Sir, your telescope is ready."u8.ToArray());

    internal static string Empty(TemporaryFolder folder) => Write(folder, "empty.jpg", []);

    internal static string CutOff(TemporaryFolder folder)
    {
        var whole = File.ReadAllBytes(SampleImages.PathOf(SampleImages.Blank));
        return Write(folder, "cut.jpg", whole[..(whole.Length / 2)]);
    }

    internal static string OnePixel(TemporaryFolder folder) => Write(folder, "one.png", Png(1, 1));

    internal static string HugeHeader(TemporaryFolder folder) => Write(folder, "huge.png", Png(30000, 30000));

    internal static string Missing(TemporaryFolder folder) => folder.File("nowhere.jpg");

    internal static string Folder(TemporaryFolder folder) => Directory.CreateDirectory(folder.File("photos.jpg")).FullName;

    /// <summary>A link that leads nowhere: unlike taking away permission, it cannot be opened by root either.</summary>
    internal static string DanglingLink(TemporaryFolder folder) => File.CreateSymbolicLink(folder.File("link.jpg"), folder.File("gone.jpg")).FullName;

    private static string Write(TemporaryFolder folder, string name, byte[] bytes)
    {
        File.WriteAllBytes(folder.File(name), bytes);
        return folder.File(name);
    }

    /// <summary>A grey PNG (ISO/IEC 15948) whose header gives a size, with one row of pixels behind it.</summary>
    private static byte[] Png(int width, int height)
    {
        using var file = new MemoryStream();
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 8;
        Chunk(file, "IHDR", header);
        using var rows = new MemoryStream();
        using (var packed = new ZLibStream(rows, CompressionLevel.Optimal, leaveOpen: true))
        {
            packed.Write(new byte[width + 1]);
        }

        Chunk(file, "IDAT", rows.ToArray());
        Chunk(file, "IEND", []);
        return file.ToArray();
    }

    private static void Chunk(MemoryStream file, string name, byte[] data)
    {
        var number = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        file.Write(number);
        byte[] body = [.. Encoding.ASCII.GetBytes(name), .. data];
        file.Write(body);
        BinaryPrimitives.WriteUInt32BigEndian(number, Checksum(body));
        file.Write(number);
    }

    /// <summary>The checksum of PNG (ISO/IEC 15948, annex D).</summary>
    private static uint Checksum(byte[] bytes) => bytes.Aggregate(0xFFFFFFFF, (sum, value) =>
    {
        sum ^= value;
        for (var bit = 0; bit < 8; bit++)
        {
            sum = (sum & 1) != 0 ? 0xEDB88320 ^ (sum >> 1) : sum >> 1;
        }

        return sum;
    }) ^ 0xFFFFFFFF;
}
