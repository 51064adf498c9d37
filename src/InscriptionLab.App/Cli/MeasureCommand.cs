using System;
using System.CommandLine;
using System.Globalization;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>measure</c> as the command line knows it.</summary>
internal sealed class MeasureCommand(Composition composition, Terminal terminal)
{
    /// <summary>Heights beyond this are taken for a slip: no card lies a third of a metre below a lens cell.</summary>
    private static readonly double LargestOffset = MeasureRequest.LargestPlaneOffset.Millimetres;

    private readonly Argument<string[]> _photos = new("PHOTO") { Arity = ArgumentArity.OneOrMore };
    private readonly Option<string?> _json = new("--json");
    private readonly Option<string?> _out = new("--out");
    private readonly Option<string?> _scale = new("--scale");
    private readonly Option<string?> _offset = new("--plane-offset");
    private readonly Option<string?> _camera = new("--camera");
    private readonly Option<string?> _catalogue = new("--catalogue");
    private readonly Option<bool> _oneCell = new("--one-cell");
    private readonly OpticsOptions _optics = new();

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("measure") { _photos, _scale, _offset, _camera, _catalogue, _oneCell, _json, _out };
        foreach (var option in _optics.All)
        {
            command.Add(option);
        }

        command.SetAction(parsed => Run(parsed, cancel()));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var (scaleText, offsetText) = (parsed.GetValue(_scale), parsed.GetValue(_offset));
        ScaleRequest? scale = null;
        if (scaleText is not null && !ScaleRequest.TryParse(scaleText, out scale, out var problem))
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.Misused;
        }

        if (!TryOffset(offsetText, out var offset))
        {
            terminal.Error.WriteLine($"--plane-offset needs a number of millimetres between -{LargestOffset:0} and {LargestOffset:0}, for example --plane-offset 8, not {offsetText}.");
            return ExitCode.Misused;
        }

        var camera = parsed.GetValue(_camera);
        var request = new MeasureRunRequest([.. parsed.GetRequiredValue(_photos)], parsed.GetValue(_json), parsed.GetValue(_out), scaleText, offsetText, camera, new MeasureRequest(scale, offset) { CameraCalibrated = camera is not null })
        {
            OneCell = parsed.GetValue(_oneCell),
            Catalogue = parsed.GetValue(_catalogue),
            Optics = _optics.Given(parsed) ? (objective, stop) => _optics.Request(parsed, objective, stop) : null,
        };
        if (request.OneCell && request.Photos.Length < 2)
        {
            terminal.Error.WriteLine("--one-cell combines photos of one cell: give two photos or more, better five.");
            return ExitCode.Misused;
        }

        try
        {
            // Options that are not understood are told before any photo is measured.
            _ = request.Optics?.Invoke(Length.FromMillimetres(LargestOffset), null);
        }
        catch (FormatException wrong)
        {
            terminal.Error.WriteLine(wrong.Message);
            return ExitCode.Misused;
        }

        return new MeasureRun(composition, terminal, request).Run(cancel);
    }

    internal static bool TryOffset(string? text, out Length? offset)
    {
        offset = null;
        if (text is null)
        {
            return true;
        }

        var number = text.EndsWith("mm", StringComparison.OrdinalIgnoreCase) ? text[..^2] : text;
        if (!double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var millimetres) || !(Math.Abs(millimetres) <= LargestOffset))
        {
            return false;
        }

        offset = Length.FromMillimetres(millimetres);
        return true;
    }
}
