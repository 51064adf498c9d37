using System;
using System.CommandLine;
using System.Threading;
using InscriptionLab.App.Surveying;
using InscriptionLab.Surveys;

namespace InscriptionLab.App.Cli;

/// <summary>The commands <c>feed</c> and <c>worker</c> as the command line knows them: a survey over several machines.</summary>
internal sealed class WorkerCommand(Composition composition, Terminal terminal)
{
    private readonly Option<string> _queue = new("--queue") { Required = true };
    private readonly Option<string> _catalogue = new("--catalogue") { Required = true };
    private readonly Option<string?> _reference = new("--reference");

    internal Command ToFeed(Func<CancellationToken> cancel)
    {
        var folders = new Argument<string[]>("FOLDER") { Arity = ArgumentArity.OneOrMore };
        var objects = new Option<string?>("--objects");
        var command = new Command("feed") { folders, _queue, _catalogue, _reference, objects };
        command.SetAction(parsed => new QueueReport(composition, terminal.Output, terminal.Error).Feed(
            new SurveyRequest([.. parsed.GetRequiredValue(folders)], ".", 1, parsed.GetValue(objects), string.Empty),
            parsed.GetRequiredValue(_queue),
            parsed.GetRequiredValue(_catalogue),
            parsed.GetValue(_reference),
            cancel()));
        return command;
    }

    internal Command ToWorker(Func<CancellationToken> cancel)
    {
        var workers = Counts.Option("--workers", Environment.ProcessorCount);
        var untilEmpty = new Option<bool>("--until-empty");
        var command = new Command("worker") { _queue, _catalogue, _reference, workers, untilEmpty };
        command.SetAction(parsed => new QueueReport(composition, terminal.Output, terminal.Error).Work(
            parsed.GetRequiredValue(_queue),
            parsed.GetRequiredValue(_catalogue),
            parsed.GetValue(_reference),
            parsed.GetValue(workers),
            parsed.GetValue(untilEmpty),
            cancel()));
        return command;
    }
}
