using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.CommandLine;
using System.IO;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>examine</c>: runs the flow on each photo and writes what it gave.</summary>
internal sealed class ExamineCommand(Composition composition, Terminal terminal)
{
    private readonly Argument<string[]> _photos = new("PHOTO") { Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> _json = new("--json");
    private readonly Option<string?> _out = new("--out");
    private readonly Option<string?> _reference = new("--reference");
    private readonly Option<string?> _as = new("--as");

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("examine") { _photos, _json, _out, _reference, _as };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(_photos), parsed.GetValue(_json), cancel()));
        return command;
    }

    private int Run(IReadOnlyList<string> photos, string? json, CancellationToken cancel)
    {
        var examiner = composition.Examiner();
        var examined = ImmutableArray.CreateBuilder<Examination>();
        var failed = false;
        foreach (var photo in photos)
        {
            try
            {
                var examination = examiner.Examine(photo, cancel);
                examined.Add(examination);
                terminal.Output.Write(TextReport.Of(examination));
            }
            catch (InscriptionLabException problem)
            {
                failed = true;
                terminal.Error.WriteLine(problem.Message);
            }
        }

        if (json is not null)
        {
            File.WriteAllLines(json, ToLines(examined));
        }

        return failed ? ExitCode.Failed : ExitCode.Done;
    }

    private static IEnumerable<string> ToLines(IEnumerable<Examination> examined)
    {
        foreach (var examination in examined)
        {
            yield return JsonLines.LineOf(RecordMaker.Of(examination));
        }
    }
}
