using System;
using System.CommandLine;
using System.Threading;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>examine</c> as the command line knows it.</summary>
internal sealed class ExamineCommand(Composition composition, Terminal terminal)
{
    private readonly Argument<string[]> _photos = new("PHOTO") { Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> _json = new("--json");
    private readonly Option<string?> _out = new("--out");
    private readonly Option<string?> _reference = new("--reference");
    private readonly Option<string?> _as = new("--as");
    private readonly Option<string?> _catalogue = new("--catalogue");

    private readonly Option<string?> _construction = new("--construction");
    private readonly Option<string?> _checklist = new("--checklist");
    private readonly Option<string?> _prior = new("--prior");

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("examine") { _photos, _json, _out, _reference, _as, _catalogue, _construction, _checklist, _prior };
        command.SetAction(parsed =>
        {
            var together = parsed.GetValue(_as);
            if (together is not null && !ExamineRequest.Kinds.Contains(together))
            {
                terminal.Error.WriteLine($"--as knows raking, turns and separate, not {together}.");
                return ExitCode.Misused;
            }

            var request = new ExamineRequest(
                [.. parsed.GetRequiredValue(_photos)],
                parsed.GetValue(_json),
                parsed.GetValue(_out),
                parsed.GetValue(_reference),
                together,
                parsed.GetValue(_catalogue),
                parsed.GetValue(_construction),
                parsed.GetValue(_checklist),
                parsed.GetValue(_prior));
            return new ExamineRun(composition, terminal, request).Run(cancel());
        });
        return command;
    }
}
