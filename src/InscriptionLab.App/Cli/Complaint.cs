using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;

namespace InscriptionLab.App.Cli;

/// <summary>Says in one sentence what is wrong with a command line.</summary>
internal static partial class Complaint
{
    /// <summary>Gives the sentence, or null where the command line is understood.</summary>
    internal static string? About(ParseResult parsed, string[] arguments)
    {
        if (arguments[0] == "help")
        {
            return $"There is no help on {arguments[1]}; ./lab help lists the commands and the guides.";
        }

        if (parsed.CommandResult.Command is RootCommand)
        {
            return $"There is no command {arguments[0]}; the commands are serve, examine, measure, card, calibrate-camera, optics, thread, list, survey, feed, worker, catalogue, report, export, dataset, assess, test, bench and help.";
        }

        var command = parsed.CommandResult.Command;
        var options = command.Options.Select(option => option.Name).ToList();
        if (UnknownOption(arguments, options) is { } unknown)
        {
            return $"{command.Name} has no option {unknown}; it has {string.Join(", ", options)} (see ./lab help {arguments[0]}).";
        }

        if (arguments.Length == 1 && KeepingPages.Of(command.Name) is { } page)
        {
            return page.TrimEnd();
        }

        if (arguments.Length == 1 && HelpPage.OfInstrument(command.Name) is { } help)
        {
            return help.TrimEnd();
        }

        if (command.Subcommands.Count > 0)
        {
            return $"{command.Name} has no {arguments[1]}; it has {string.Join(", ", command.Subcommands.Select(known => known.Name))} (see ./lab help {arguments[0]}).";
        }

        if (arguments.Length == 1)
        {
            return $"{command.Name} needs at least one photo, for example ./lab {command.Name} photo.jpg.";
        }

        return parsed.Errors.Count == 0 ? null : $"{Plain(parsed)} (see ./lab help {arguments[0]}).";
    }

    /// <summary>Says in plain words what the parser says in words of the platform.</summary>
    private static string Plain(ParseResult parsed)
    {
        var known = parsed.CommandResult.Command;
        if (parsed.UnmatchedTokens is [var first, ..])
        {
            return $"{known.Name} does not know what to do with {first}";
        }

        var message = parsed.Errors[0].Message;
        if (Unparsed().Match(message) is { Success: true } match)
        {
            return $"{match.Groups["name"].Value} needs {(match.Groups["type"].Value.Contains("Int", StringComparison.Ordinal) ? "a whole number" : "a number")}, not {match.Groups["text"].Value}";
        }

        if (known.Options.FirstOrDefault(option => option.Required && parsed.GetResult(option) is null or { Implicit: true }) is { } absent)
        {
            return $"{known.Name} needs {absent.Name} and a value after it";
        }

        if (known.Options.FirstOrDefault(option => option.Arity.MinimumNumberOfValues > 0 && parsed.GetResult(option) is { Implicit: false, Tokens.Count: 0 }) is { } empty)
        {
            return $"{empty.Name} needs a value after it";
        }

        return known.Arguments.FirstOrDefault(argument => (parsed.GetResult(argument)?.Tokens.Count ?? 0) < argument.Arity.MinimumNumberOfValues) is { } lacking
            ? $"{known.Name} needs {lacking.Name} after it"
            : message.TrimEnd('.');
    }

    [GeneratedRegex("^Cannot parse argument '(?<text>.*)' for \\w+ '(?<name>[^']+)' as expected type '(?<type>[^']+)'", RegexOptions.CultureInvariant)]
    private static partial Regex Unparsed();

    private static string? UnknownOption(string[] arguments, List<string> options) => arguments
        .TakeWhile(argument => argument != "--")
        .Select(argument => argument.Split('=', 2)[0])
        .FirstOrDefault(argument => argument.Length > 1 && argument[0] == '-' && !IsNumber(argument) && !options.Contains(argument, StringComparer.Ordinal));

    /// <summary>Tells a number below zero, with or without its unit, from an option.</summary>
    private static bool IsNumber(string argument) => argument.Length > 1 && (char.IsAsciiDigit(argument[1]) || double.TryParse(argument, NumberStyles.Float, CultureInfo.InvariantCulture, out _));
}
