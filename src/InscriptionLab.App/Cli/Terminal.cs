using System;
using System.IO;
using System.Text;

namespace InscriptionLab.App.Cli;

/// <summary>Where the program writes: results to one stream, complaints to the other.</summary>
/// <param name="Output">Results.</param>
/// <param name="Error">One sentence for each thing that went wrong.</param>
internal sealed record Terminal(TextWriter Output, TextWriter Error)
{
    private static readonly UTF8Encoding Utf8WithoutMark = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Gives the streams of this process, in UTF-8 whatever the locale says.</summary>
    internal static Terminal OfThisProcess()
    {
        Console.OutputEncoding = Utf8WithoutMark;
        return new Terminal(Console.Out, Console.Error);
    }
}
