using System;
using System.CommandLine;
using System.Threading;
using InscriptionLab.App.Cataloguing;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>report</c> as the command line knows it.</summary>
internal sealed class ReportCommand(Composition composition, Terminal terminal)
{
    internal const string Help = """
        ./lab report [OBJECT...] --out FILE.pdf|FILE.html [--short] [--catalogue FILE] [--reference FILE]

        Writes a report of one object of the catalogue, of several, or of all: photos, the surface laid
        flat, the lettering letter by letter beside the nearest forms, the finding with its reasons and
        ratios, measurements with their budgets, what stays open, and where it all comes from.

          OBJECT             names of objects; without one every object of the catalogue
          --out FILE         where it goes; .pdf for a printed page, .html for one page that needs
                             nothing beside itself
          --short            one page an object, under the categories of Object ID (J. Paul Getty Trust,
                             ICOM); what photos cannot say is left open
          --catalogue FILE   the catalogue (default inscriptionlab.db)
          --reference FILE   the list with which the photos were examined (default: the demonstration list)

        The catalogue keeps no photos: pictures come in where the photo's file still lies where it lay.

        Exit code: 0 done, 1 the report could not be written, 2 the command was not understood.

        """;

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var keys = new Argument<string[]>("OBJECT") { Arity = ArgumentArity.ZeroOrMore };
        Option<string> catalogue = new("--catalogue") { DefaultValueFactory = _ => CatalogueCommand.DefaultName }, file = new("--out") { Required = true };
        Option<string?> reference = new("--reference");
        Option<bool> isShort = new("--short");
        var command = new Command("report") { keys, file, isShort, catalogue, reference };
        command.SetAction(parsed => new PaperReport(composition, terminal.Output).Write(
            parsed.GetRequiredValue(catalogue),
            [.. parsed.GetValue(keys) ?? []],
            parsed.GetRequiredValue(file),
            parsed.GetValue(isShort),
            parsed.GetValue(reference),
            cancel()));
        return command;
    }
}
