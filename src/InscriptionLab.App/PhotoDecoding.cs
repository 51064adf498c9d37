using System;
using System.Globalization;
using System.IO;
using InscriptionLab.App.Cli;
using InscriptionLab.Vision.Photos;

namespace InscriptionLab.App;

/// <summary>The program starts itself once more to decode photos: a file that crashes a native library then ends that process and not the work.</summary>
internal static class PhotoDecoding
{
    /// <summary>The argument with which the program only decodes. No command of the user's: it speaks in bytes. A number behind it makes the bound of its memory lower.</summary>
    internal const string Word = "decode-photos";

    private const string Name = "inscriptionlab";
    private const string Host = "dotnet";

    /// <summary>Gives the decoder; whichever program this is (page, assessment), it starts the one named here, which lies beside it.</summary>
    internal static DecoderProcess Process()
    {
        var program = Path.Combine(AppContext.BaseDirectory, Name);
        return Path.GetFileNameWithoutExtension(Environment.ProcessPath) == Host
            ? new DecoderProcess(Environment.ProcessPath!, program + ".dll", Word)
            : new DecoderProcess(program, Word);
    }

    /// <summary>Tells whether the program is started only to decode, and how many bytes of memory it may hold then; null where it is not.</summary>
    internal static ulong? Asked(string[] arguments) => arguments switch
    {
        [Word] => DecoderServer.MostBytes,
        [Word, var bytes] when ulong.TryParse(bytes, NumberStyles.None, CultureInfo.InvariantCulture, out var most) => Math.Min(most, DecoderServer.MostBytes),
        _ => null,
    };

    /// <summary>Decodes what comes on the standard input until that ends.</summary>
    internal static int Serve(ulong mostBytes)
    {
        using var questions = Console.OpenStandardInput();
        using var answers = new BufferedStream(Console.OpenStandardOutput());
        DecoderServer.Serve(questions, answers, mostBytes);
        return ExitCode.Done;
    }
}
