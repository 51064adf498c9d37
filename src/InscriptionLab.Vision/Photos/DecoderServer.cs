using System;
using System.IO;
using System.Runtime.InteropServices;

namespace InscriptionLab.Vision.Photos;

/// <summary>The other side of <see cref="DecoderProcess"/>: decodes what it is asked, within bounds that the system keeps, until nobody asks any more.</summary>
public static partial class DecoderServer
{
    /// <summary>Most memory the process may hold.</summary>
    /// <value>3 GiB, three times what the costliest photo that was tried needs: 834 MiB for a PNG of 100 megapixels and 16 bits, 651 MiB for a progressive JPEG of as many.</value>
    public const ulong MostBytes = 3UL * 1024 * 1024 * 1024;

    private const int ResourceData = 2;
    private const int ResourceCore = 4;

    /// <summary>Serves until the questions end.</summary>
    /// <param name="questions">What is asked.</param>
    /// <param name="answers">What is answered.</param>
    /// <param name="mostBytes">Most memory the process may hold; a photo that needs more is answered as one that cannot be decoded, or ends the process.</param>
    public static void Serve(Stream questions, Stream answers, ulong mostBytes = MostBytes)
    {
        ArgumentNullException.ThrowIfNull(questions);
        ArgumentNullException.ThrowIfNull(answers);
        if (OperatingSystem.IsLinux())
        {
            // Memory that the process writes (getrlimit(2), RLIMIT_DATA), and no dump of a stranger's photo where it crashes.
            _ = SetLimit(ResourceData, new Bound(mostBytes, mostBytes));
            _ = SetLimit(ResourceCore, new Bound(0, 0));
        }

        var decoder = new NativeDecoder();
        while (DecoderMessages.Question(questions) is var (what, file))
        {
            if (what == DecoderMessages.AskHeifHeader)
            {
                DecoderMessages.Answer(answers, decoder.Header(file));
            }
            else
            {
                DecoderMessages.Answer(answers, decoder.Pixels(file, what == DecoderMessages.AskHeifPixels));
            }
        }
    }

    [LibraryImport("libc", EntryPoint = "setrlimit")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetLimit(int resource, in Bound bound);

    /// <summary>The system's <c>struct rlimit</c>.</summary>
    private readonly record struct Bound(ulong Soft, ulong Hard);
}
