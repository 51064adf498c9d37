using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Optics;

namespace InscriptionLab.App.Cli;

/// <summary>Options that say what is known of a telescope beside the sizes of its objective and stop.</summary>
internal sealed class OpticsOptions
{
    /// <summary>Sizes beyond these are taken for slips: an aperture of a tenth of a millimetre, a focal length of twenty metres.</summary>
    private const double SmallestMillimetres = 0.1;
    private const double LargestMillimetres = 20000;

    private readonly Option<string?> _focal = new("--focal");
    private readonly Option<string?> _eyepiece = new("--eyepiece-focal");
    private readonly Option<string?> _exitPupil = new("--exit-pupil");
    private readonly Option<string?> _stopDistance = new("--stop-distance");
    private readonly Option<bool> _throughGlass = new("--through-glass");
    private readonly Option<string?> _magnification = new("--magnification");
    private readonly Option<string?> _index = new("--index");
    private readonly Option<string?> _abbe = new("--abbe");

    /// <summary>Gets the options.</summary>
    internal IReadOnlyList<Option> All => [_focal, _eyepiece, _exitPupil, _stopDistance, _throughGlass, _magnification, _index, _abbe];

    /// <summary>Reads a size.</summary>
    /// <exception cref="FormatException">It is not understood; the message says what is wrong.</exception>
    internal static Length Size(string name, string text) =>
        ScaleRequest.TryLength(text, SmallestMillimetres, LargestMillimetres, out var length, out var problem) ? length : throw new FormatException($"{name}: {problem}");

    /// <summary>Says whether the user gave any of the options.</summary>
    internal bool Given(ParseResult parsed) => All.Any(option => parsed.GetResult(option) is { Implicit: false });

    /// <summary>Gives what is known of the telescope.</summary>
    /// <exception cref="FormatException">An option is not understood; the message says what is wrong.</exception>
    internal OpticsRequest Request(ParseResult parsed, Length objective, Length? stop)
    {
        Length? Of(Option<string?> option) => parsed.GetValue(option) is { } text ? Size(option.Name, text) : null;
        return new OpticsRequest
        {
            Objective = objective,
            Stop = stop,
            StopSeenThroughGlass = parsed.GetValue(_throughGlass),
            StopDistance = Of(_stopDistance),
            FocalLength = Of(_focal),
            EyepieceFocalLength = Of(_eyepiece),
            ExitPupil = Of(_exitPupil),
            Magnification = Numbers("--magnification", parsed.GetValue(_magnification), 1)?[0],
            Index = Numbers("--index", parsed.GetValue(_index), 1)?[0],
            AbbeNumbers = Numbers("--abbe", parsed.GetValue(_abbe), 2) is { } abbe ? (abbe[0], abbe[1]) : null,
        };
    }

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
