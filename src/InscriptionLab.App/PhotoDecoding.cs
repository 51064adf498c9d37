using System;
using System.IO;
using InscriptionLab.App.Cli;
using InscriptionLab.Vision.Photos;

namespace InscriptionLab.App;

/// <summary>The program starts itself once more to decode photos: a file that crashes a native library then ends that process and not the work.</summary>
internal static class PhotoDecoding
{
    /// <summary>The one argument with which the program only decodes. No command of the user's: it speaks in bytes.</summary>
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

    /// <summary>Decodes what comes on the standard input until that ends.</summary>
    internal static int Serve()
    {
        using var questions = Console.OpenStandardInput();
        using var answers = new BufferedStream(Console.OpenStandardOutput());
        DecoderServer.Serve(questions, answers);
        return ExitCode.Done;
    }
}
