using System;
using System.CommandLine;
using System.Linq;
using InscriptionLab.App.Reports;
using InscriptionLab.Optics;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>optics</c>: what follows from a telescope's sizes.</summary>
internal sealed class OpticsCommand(Terminal terminal)
{
    internal const string Page = """
        ./lab optics --objective SIZE [--stop SIZE [--through-glass] [--stop-distance SIZE]] [--focal SIZE]
                     [--eyepiece-focal SIZE | --exit-pupil SIZE | --magnification N]
                     [--index N] [--abbe V1,V2] [--also-written SIZE] [--json FILE]

        Works out what the glass could do: stop ratio and light loss, entrance and exit pupil, magnification,
        twilight number, relative brightness, resolution, f-number, the blur of a single lens and what the
        stop gained, the powers of an achromat, and what the words "day or night" are worth. A SIZE is a
        number with mm, cm or inch: 40mm, 1.6inch, 1/2inch.

          --objective SIZE       clear aperture of the objective
          --stop SIZE            diameter of the aperture stop
          --through-glass        the stop was measured through the objective
          --stop-distance SIZE   distance of the stop behind the objective
          --focal SIZE           focal length of the objective
          --eyepiece-focal SIZE  focal length of the whole eyepiece, erector and all
          --exit-pupil SIZE      exit pupil diameter, measured behind the eyepiece (never towards the Sun)
          --magnification N      angular magnification, where it is known otherwise
          --index N              refractive index of a single objective lens (about 1.52 for old crown glass)
          --abbe V1,V2           Abbe numbers of the two glasses of an achromat (about 60,36)
          --also-written SIZE    the objective's size as written elsewhere: a contradiction is told
          --json FILE            also write the figures as one JSON object (- for the screen)

        Exit code: 0 done, 1 the file could not be written, 2 the command was not understood.

        """;

    private readonly OpticsOptions _options = new();
    private readonly Option<string?> _objective = new("--objective");
    private readonly Option<string?> _stop = new("--stop");
    private readonly Option<string?> _alsoWritten = new("--also-written");
    private readonly Option<string?> _json = new("--json");

    internal Command ToCommand()
    {
        var command = new Command("optics") { _objective, _stop, _alsoWritten, _json };
        foreach (var option in _options.All)
        {
            command.Add(option);
        }

        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        try
        {
            return Run(parsed, Request(parsed));
        }
        catch (FormatException problem)
        {
            terminal.Error.WriteLine(OneLine.Of(problem.Message));
            return ExitCode.Misused;
        }
        catch (ArgumentOutOfRangeException problem)
        {
            terminal.Error.WriteLine($"These sizes belong to no telescope: {problem.Message.Split('(', '\n')[0].Trim()}");
            return ExitCode.Misused;
        }
    }

    private int Run(ParseResult parsed, OpticsRequest request)
    {
        var account = OpticsAccount.Of(request);
        if (parsed.GetValue(_alsoWritten) is { } written && Contradiction(parsed.GetValue(_objective)!, written) is { } contradiction)
        {
            account = account with { Notes = account.Notes.Add(contradiction) };
        }

        var json = parsed.GetValue(_json);
        if (json != JsonTarget.Screen)
        {
            terminal.Output.Write(OpticsText.Of(account));
        }

        JsonTarget.Write(json, [OpticsText.Json(account).ToJsonString()], terminal.Output);
        return ExitCode.Done;
    }

    private static string? Contradiction(string objective, string written)
    {
        var inInches = new[] { objective, written }.FirstOrDefault(IsInch);
        var inMillimetres = new[] { objective, written }.FirstOrDefault(text => !IsInch(text));
        if (inInches is null || inMillimetres is null)
        {
            return null;
        }

        var metric = Number(inMillimetres);
        var centimetres = inMillimetres.Contains("cm", StringComparison.OrdinalIgnoreCase) ? 10 : 1;
        return InchAndMillimetre.Contradiction(
            OpticsOptions.Size("--also-written", inInches).Inches,
            InchAndMillimetre.StepOf(Number(inInches)),
            OpticsOptions.Size("--also-written", inMillimetres).Millimetres,
            centimetres * InchAndMillimetre.StepOf(metric));
    }

    private static bool IsInch(string text) => text.TrimEnd().EndsWith("inch", StringComparison.OrdinalIgnoreCase) || text.TrimEnd().EndsWith("in", StringComparison.OrdinalIgnoreCase);

    private static string Number(string text) => new([.. text.Trim().TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '/')]);

    private OpticsRequest Request(ParseResult parsed)
    {
        var objective = parsed.GetValue(_objective) ?? throw new FormatException("optics needs the clear aperture of the objective, for example ./lab optics --objective 40mm.");
        return _options.Request(parsed, OpticsOptions.Size("--objective", objective), parsed.GetValue(_stop) is { } stop ? OpticsOptions.Size("--stop", stop) : null);
    }
}
