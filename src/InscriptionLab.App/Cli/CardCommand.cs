using System;
using System.CommandLine;
using System.IO;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>card</c>: writes the printable scale card.</summary>
internal sealed class CardCommand(Terminal terminal)
{
    internal const string Page = """
        ./lab card FILE.pdf

        Writes the scale card: one page of A4 at true size, with coded squares that the program finds by
        itself, a rule in millimetres and one in inches, grey steps, and a check line of 100 mm. Print it
        at 100 %, measure the check line with calipers, and tell the program what it measures:
        ./lab measure PHOTO --scale card:99.7mm

        Exit code: 0 done, 1 the file could not be written, 2 the command was not understood.

        """;

    private readonly Argument<string> _file = new("FILE");

    internal Command ToCommand()
    {
        var command = new Command("card") { _file };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(_file)));
        return command;
    }

    private int Run(string file)
    {
        if (!file.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            terminal.Error.WriteLine($"The card is a PDF: name it so, for example ./lab card card.pdf, not {file}.");
            return ExitCode.Misused;
        }

        try
        {
            WholeFile.Write(file, ScaleCardPage.Make());
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the card cannot be written there; name another file.", problem);
        }

        terminal.Output.WriteLine($"written to {file}: print it at 100 %, measure its check line with calipers, and pass the length: --scale card:99.7mm");
        return ExitCode.Done;
    }
}
