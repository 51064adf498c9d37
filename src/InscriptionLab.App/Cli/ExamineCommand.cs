using System;
using System.CommandLine;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.Cells;

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
    private readonly Option<string[]> _rings = new("--ring") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string[]> _lamp = new("--lamp") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string?> _construction = new("--construction");
    private readonly Option<string?> _checklist = new("--checklist");
    private readonly Option<string?> _prior = new("--prior");
    private readonly Option<string?> _scale = new("--scale");
    private readonly Option<string?> _offset = new("--plane-offset");

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("examine") { _photos, _json, _out, _reference, _as, _catalogue, _construction, _checklist, _prior, _edges, _rings, _lamp, _scale, _offset };
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
            var rings = parsed.GetValue(_rings) ?? [];
            var lamps = parsed.GetValue(_lamp) ?? [];
            if ((ComplaintAbout(edges, photos.Length) ?? ComplaintAbout(rings, edges, photos.Length) ?? ComplaintAboutLamps(lamps, photos.Length) ?? PieceFacts.Complaint(parsed.GetValue(_prior))) is { } complaint)
            {
                terminal.Error.WriteLine(complaint);
                return ExitCode.Misused;
            }

            if (Beside(parsed, out var beside) is { } fault)
            {
                terminal.Error.WriteLine(fault);
                return ExitCode.Misused;
            }

            composition.Beside = beside;
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
                [.. edges],
                [.. rings],
                [.. lamps])
            {
                Scale = parsed.GetValue(_scale),
                Offset = parsed.GetValue(_offset),
            };
            return new ExamineRun(composition, terminal, request).Run(cancel());
        });
        return command;
    }

    /// <summary>Reads what is said of a scale beside the tube; gives a sentence where it is not understood.</summary>
    private string? Beside(ParseResult parsed, out MeasureRequest beside)
    {
        beside = MeasureRequest.Nothing;
        ScaleRequest? scale = null;
        if (parsed.GetValue(_scale) is { } text && !ScaleRequest.TryParse(text, out scale, out var problem))
        {
            return problem;
        }

        if (!MeasureCommand.TryOffset(parsed.GetValue(_offset), out var offset))
        {
            return $"--plane-offset needs the height of the tube's axis above the scale in millimetres, for example --plane-offset 20, not {parsed.GetValue(_offset)}.";
        }

        beside = new MeasureRequest(scale, offset);
        return null;
    }

    private static string Given(int photos, int times, string option) => $"for {photos} {(photos == 1 ? "photo" : "photos")} {option} stands there {(times == 1 ? "once" : $"{times} times")}";

    private static string? ComplaintAboutLamps(string[] lamps, int photos)
    {
        if (lamps.Length > 0 && lamps.Length != photos)
        {
            return $"--lamp is given once for each photo, in the order of the photos: {Given(photos, lamps.Length, "--lamp")}.";
        }

        return Array.Find(lamps, text => StatedLamp.Parse(text) is null) is { } wrong ? $"--lamp {wrong}: where the lamp stood is written {StatedLamp.Grammar}." : null;
    }

    private static string? ComplaintAbout(string[] edges, int photos)
    {
        if (edges.Length > 0 && edges.Length != photos)
        {
            return $"--edges is given once for each photo, in the order of the photos ({MarkedEdges.Find} where the program shall look itself): {Given(photos, edges.Length, "--edges")}.";
        }

        return Array.Find(edges, text => text != MarkedEdges.Find && MarkedEdges.Parse(text) is null) is { } wrong
            ? $"--edges {wrong}: the two long sides of the tube are written x1,y1,x2,y2/x3,y3,x4,y4 in pixels of the upright photo, or {MarkedEdges.Find}."
            : null;
    }

    private static string? ComplaintAbout(string[] rings, string[] edges, int photos)
    {
        if (rings.Length > 0 && rings.Length != photos)
        {
            return $"--ring is given once for each photo, in the order of the photos ({MarkedRing.Find} where the program shall look itself): {Given(photos, rings.Length, "--ring")}.";
        }

        if (Array.Find(rings, text => text != MarkedRing.Find && MarkedRing.Parse(text) is null) is { } wrong)
        {
            return $"--ring {wrong}: {MarkedRing.Grammar}; or {MarkedRing.Find}.";
        }

        return Array.Exists([.. rings.Zip(edges)], pair => pair is not (MarkedRing.Find, _) and not (_, MarkedEdges.Find))
            ? $"--ring and --edges cannot both mark one photo: write {MarkedRing.Find} for the one that does not carry the lettering."
            : null;
    }
}
