using System;
using System.CommandLine;
using System.Threading;
using InscriptionLab.App.Surveying;
using InscriptionLab.Surveys;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>survey</c> as the command line knows it.</summary>
internal sealed class SurveyCommand(Composition composition, Terminal terminal)
{
    private readonly Argument<string[]> _folders = new("FOLDER") { Arity = ArgumentArity.OneOrMore };
    private readonly Option<string> _out = new("--out") { Required = true };
    private readonly Option<string?> _reference = new("--reference");
    private readonly Option<string?> _objects = new("--objects");
    private readonly Option<string?> _catalogue = new("--catalogue");
    private readonly Option<int> _workers = Counts.Option("--workers", Environment.ProcessorCount);

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("survey") { _folders, _out, _reference, _objects, _catalogue, _workers };
        command.SetAction(parsed => Run(parsed, cancel()));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel) => new SurveyReport(composition, terminal.Output, terminal.Error).Run(
        new SurveyRequest([.. parsed.GetRequiredValue(_folders)], parsed.GetRequiredValue(_out), parsed.GetValue(_workers), parsed.GetValue(_objects), string.Empty),
        parsed.GetValue(_reference),
        parsed.GetValue(_catalogue),
        cancel) ? ExitCode.Done : ExitCode.Failed;
}
