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
    private readonly Option<string[]> _edges = new("--edges") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };

    private readonly Option<string?> _construction = new("--construction");
    private readonly Option<string?> _checklist = new("--checklist");
    private readonly Option<string?> _prior = new("--prior");

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("examine") { _photos, _json, _out, _reference, _as, _catalogue, _construction, _checklist, _prior, _edges };
        command.SetAction(parsed =>
        {
            var together = parsed.GetValue(_as);
            if (together is not null && !ExamineRequest.Kinds.Contains(together))
            {
                terminal.Error.WriteLine($"--as knows raking, turns and separate, not {together}.");
                return ExitCode.Misused;
            }

            var photos = parsed.GetRequiredValue(_photos);
            var edges = parsed.GetValue(_edges) ?? [];
            if (ComplaintAbout(edges, photos.Length) is { } complaint)
            {
                terminal.Error.WriteLine(complaint);
                return ExitCode.Misused;
            }

            var request = new ExamineRequest(
                [.. photos],
                parsed.GetValue(_json),
                parsed.GetValue(_out),
                parsed.GetValue(_reference),
                together,
                parsed.GetValue(_catalogue),
                parsed.GetValue(_construction),
                parsed.GetValue(_checklist),
                parsed.GetValue(_prior),
                [.. edges]);
            return new ExamineRun(composition, terminal, request).Run(cancel());
        });
        return command;
    }

    private static string? ComplaintAbout(string[] edges, int photos)
    {
        if (edges.Length > 0 && edges.Length != photos)
        {
            return $"--edges is given once for each photo, in the order of the photos ({MarkedEdges.Find} where the program shall look itself): there are {photos} photos and {edges.Length} --edges.";
        }

        return Array.Find(edges, text => text != MarkedEdges.Find && MarkedEdges.Parse(text) is null) is { } wrong
            ? $"--edges {wrong}: the two long sides of the tube are written x1,y1,x2,y2/x3,y3,x4,y4 in pixels of the upright photo, or {MarkedEdges.Find}."
            : null;
    }
}
