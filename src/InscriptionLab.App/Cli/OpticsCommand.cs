using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using System.Text.Json.Nodes;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
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

    private static readonly string[] Sizes = ["--objective", "--stop", "--stop-distance", "--focal", "--eyepiece-focal", "--exit-pupil", "--also-written"];

    private readonly Dictionary<string, Option<string?>> _sizes = Sizes.ToDictionary(name => name, name => new Option<string?>(name), StringComparer.Ordinal);
    private readonly Option<bool> _throughGlass = new("--through-glass");
    private readonly Option<string?> _magnification = new("--magnification");
    private readonly Option<string?> _index = new("--index");
    private readonly Option<string?> _abbe = new("--abbe");
    private readonly Option<string?> _json = new("--json");

    internal Command ToCommand()
    {
        var command = new Command("optics") { _throughGlass, _magnification, _index, _abbe, _json };
        foreach (var option in _sizes.Values)
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
            terminal.Error.WriteLine(problem.Message);
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
        if (parsed.GetValue(_sizes["--also-written"]) is { } written && Contradiction(parsed.GetValue(_sizes["--objective"])!, written) is { } contradiction)
        {
            account = account with { Notes = account.Notes.Add(contradiction) };
        }

        var json = parsed.GetValue(_json);
        if (json != JsonTarget.Screen)
        {
            terminal.Output.Write(OpticsText.Of(account));
        }

        JsonTarget.Write(json, [Line(account)], terminal.Output);
        return ExitCode.Done;
    }

    private static string Line(OpticsAccount account) => new JsonObject
    {
        ["figures"] = new JsonArray([.. account.Figures.Select(f => new JsonObject { ["name"] = f.Name, ["value"] = f.Value, ["unit"] = f.Unit, ["basis"] = f.Basis })]),
        ["day_or_night"] = account.DayNight is { } claim ? new JsonArray([.. claim.Reasons.Select(reason => (JsonNode)reason)]) : null,
        ["notes"] = new JsonArray([.. account.Notes.Select(note => (JsonNode)note)]),
    }.ToJsonString();

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
            Parse("--also-written", inInches).Inches,
            InchAndMillimetre.StepOf(Number(inInches)),
            Parse("--also-written", inMillimetres).Millimetres,
            centimetres * InchAndMillimetre.StepOf(metric));
    }

    private static bool IsInch(string text) => text.TrimEnd().EndsWith("inch", StringComparison.OrdinalIgnoreCase) || text.TrimEnd().EndsWith("in", StringComparison.OrdinalIgnoreCase);

    private static string Number(string text) => new([.. text.Trim().TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '/')]);

    private OpticsRequest Request(ParseResult parsed)
    {
        Length? Size(string name) => parsed.GetValue(_sizes[name]) is { } text ? Parse(name, text) : null;
        return new OpticsRequest
        {
            Objective = Size("--objective") ?? throw new FormatException("optics needs the clear aperture of the objective, for example ./lab optics --objective 40mm."),
            Stop = Size("--stop"),
            StopSeenThroughGlass = parsed.GetValue(_throughGlass),
            StopDistance = Size("--stop-distance"),
            FocalLength = Size("--focal"),
            EyepieceFocalLength = Size("--eyepiece-focal"),
            ExitPupil = Size("--exit-pupil"),
            Magnification = Numbers("--magnification", parsed.GetValue(_magnification), 1)?[0],
            Index = Numbers("--index", parsed.GetValue(_index), 1)?[0],
            AbbeNumbers = Numbers("--abbe", parsed.GetValue(_abbe), 2) is { } abbe ? (abbe[0], abbe[1]) : null,
        };
    }

    private static Length Parse(string name, string text) =>
        ScaleRequest.TryLength(text, SmallestMillimetres, LargestMillimetres, out var length, out var problem) ? length : throw new FormatException($"{name}: {problem}");

    /// <summary>Sizes beyond these are taken for slips: an aperture of a tenth of a millimetre, a focal length of twenty metres.</summary>
    private const double SmallestMillimetres = 0.1;
    private const double LargestMillimetres = 20000;

    private static double[]? Numbers(string name, string? text, int count)
    {
        if (text is null)
        {
            return null;
        }

        var numbers = text.Split(',').Select(part => double.TryParse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : double.NaN).ToArray();
        return numbers.Length == count && numbers.All(double.IsFinite)
            ? numbers
            : throw new FormatException(count == 1 ? $"{name} needs one number above zero, not {text}." : $"{name} needs two numbers above zero with a comma between them, for example 60,36, not {text}.");
    }
}
