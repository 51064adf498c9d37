using System;
using System.IO;
using System.Text;
using System.Threading.Tasks;

namespace InscriptionLab.Files;

/// <summary>
/// Writes files whole or not at all: beside their place first, then moved there. A program killed in the middle, or a full disk, leaves what was there
/// before. Text and copies are forced to the disk, so that a power cut leaves them too; pictures, which can be made again, are not.
/// </summary>
public static class WholeFile
{
    /// <summary>Ending of a file that is not finished.</summary>
    public const string Unfinished = ".unfinished";

    private static readonly UTF8Encoding Utf8WithoutMark = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes bytes.</summary>
    public static void Write(string file, ReadOnlySpan<byte> bytes)
    {
        if (OfDevice(file))
        {
            File.WriteAllBytes(file, bytes);
            return;
        }

        var target = Target(file);
        var beside = target + Unfinished;
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, target, overwrite: true);
        }
        catch
        {
            Forget(beside);
            throw;
        }
    }

    /// <summary>Writes text in UTF-8 without a mark.</summary>
    public static void Write(string file, string text) => Write(file, writer => writer.Write(text));

    /// <summary>Lets somebody write text of any length, UTF-8 without a mark, lines ending in a line feed.</summary>
    public static void Write(string file, Action<TextWriter> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        Through(file, stream =>
        {
            using var writer = new StreamWriter(stream, Utf8WithoutMark, leaveOpen: true) { NewLine = "\n" };
            write(writer);
        });
    }

    /// <summary>Copies a file, over one that is there.</summary>
    public static void Copy(string from, string file)
    {
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.Read);
        Through(file, source.CopyTo);
    }

    private static void Through(string file, Action<FileStream> write)
    {
        var target = OfDevice(file) ? file : Target(file);
        var beside = OfDevice(file) ? file : target + Unfinished;
        try
        {
            using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write))
            {
                write(stream);
                if (beside != file)
                {
                    stream.Flush(flushToDisk: true);
                }
            }

            if (beside != file)
            {
                File.Move(beside, target, overwrite: true);
            }
        }
        catch when (beside != file)
        {
            Forget(beside);
            throw;
        }
    }

    /// <summary>Lets somebody write bytes of any length; like pictures they are not forced to the disk.</summary>
    public static async Task WriteAsync(string file, Func<Stream, Task> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        var target = OfDevice(file) ? file : Target(file);
        var beside = OfDevice(file) ? file : target + Unfinished;
        try
        {
            using (var stream = File.Create(beside))
            {
                await write(stream).ConfigureAwait(false);
            }

            if (beside != file)
            {
                File.Move(beside, target, overwrite: true);
            }
        }
        catch when (beside != file)
        {
            Forget(beside);
            throw;
        }
    }

    /// <summary>Says whether a name stands for a device or an open stream, which cannot be replaced.</summary>
    private static bool OfDevice(string file) => Path.GetFullPath(file).StartsWith("/dev/", StringComparison.Ordinal);

    /// <summary>Where a link leads is written, not the link.</summary>
    private static string Target(string file) => File.Exists(file) ? File.ResolveLinkTarget(file, returnFinalTarget: true)?.FullName ?? file : file;

    private static void Forget(string beside)
    {
        try
        {
            File.Delete(beside);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The first fault says more than this one.
        }
    }
}
