using System;
using System.CommandLine;
using System.Threading;
using InscriptionLab.App.Cataloguing;

namespace InscriptionLab.App.Cli;

/// <summary>The commands <c>export</c> and <c>dataset</c> as the command line knows them.</summary>
internal sealed class ExportCommand(Composition composition, Terminal terminal)
{
    private readonly Option<string> _catalogue = new("--catalogue") { DefaultValueFactory = _ => CatalogueCommand.DefaultName };
    private readonly Option<string> _out = new("--out") { Required = true };
    private readonly Option<string?> _licence = new("--licence");

    internal Command ToExport(Func<CancellationToken> cancel)
    {
        var format = new Argument<string>("FORM");
        var key = new Option<string?>("--object");
        var address = new Option<string>("--address") { DefaultValueFactory = _ => ExchangeReport.NowhereAddress };
        var command = new Command("export") { format, _catalogue, _out, key, address, _licence };
        command.SetAction(parsed => Report(parsed).Export(
            parsed.GetRequiredValue(format),
            parsed.GetValue(key),
            parsed.GetRequiredValue(_out),
            parsed.GetRequiredValue(address),
            parsed.GetValue(_licence),
            cancel()));
        return command;
    }

    internal Command ToDataset(Func<CancellationToken> cancel)
    {
        var seed = new Option<int>("--seed") { DefaultValueFactory = _ => 1 };
        var command = new Command("dataset") { _catalogue, _out, _licence, seed };
        command.SetAction(parsed => Report(parsed).Dataset(parsed.GetRequiredValue(_out), parsed.GetValue(_licence), parsed.GetValue(seed), cancel()));
        return command;
    }

    private ExchangeReport Report(ParseResult parsed) => new(parsed.GetRequiredValue(_catalogue), terminal.Output, composition.Clock);
}
