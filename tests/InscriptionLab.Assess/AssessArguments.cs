using System;
using System.Collections.Generic;

namespace InscriptionLab.Assess;

/// <summary>What the user asks of an assessment.</summary>
/// <param name="Folder">Folder of photos with a folder <c>truth</c>.</param>
/// <param name="Look">What to look at.</param>
/// <param name="Json">File for the figures as JSON; null for none.</param>
/// <param name="Readme">Markdown file whose marked passage is to be written; null for none.</param>
/// <param name="Predictions">JSON Lines of <c>examine</c> and <c>measure</c> to judge in place of a new run; null to run.</param>
/// <param name="Keep">File for the JSON Lines of this run; null for none.</param>
/// <param name="Pictures">With <see cref="AssessLook.Tubes"/>, folder for the photos with true and found outlines; null for none.</param>
/// <param name="Golden">JSON Lines of an earlier run that <c>--keep</c> wrote, which this run must repeat; null for none.</param>
internal sealed record AssessArguments(string Folder, AssessLook Look, string? Json, string? Readme, string? Predictions, string? Keep, string? Pictures, string? Golden = null)
{
    private static readonly HashSet<string> WithValue = new(StringComparer.Ordinal) { "--json", "--write-readme", "--predictions", "--keep", "--pictures", "--golden" };

    /// <summary>Reads the arguments; gives null and one sentence where they are not understood.</summary>
    internal static AssessArguments? Parse(string[] arguments, out string problem)
    {
        string? folder = null;
        var look = AssessLook.Whole;
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        problem = "assess needs a folder of photos with truth files, for example ./lab assess sample-images (see ./lab help assess).";
        for (var i = 0; i < arguments.Length; i++)
        {
            var argument = arguments[i];
            if (LookOf(argument) is { } asked)
            {
                look = asked;
            }
            else if (WithValue.Contains(argument))
            {
                if (++i == arguments.Length)
                {
                    problem = $"{argument} needs a file name after it (see ./lab help assess).";
                    return null;
                }

                values[argument] = arguments[i];
            }
            else if (argument.StartsWith('-') || folder is not null)
            {
                problem = $"assess does not know what to do with {argument} (see ./lab help assess).";
                return null;
            }
            else
            {
                folder = argument;
            }
        }

        return folder is null ? null : new AssessArguments(
            folder,
            look,
            values.GetValueOrDefault("--json"),
            values.GetValueOrDefault("--write-readme"),
            values.GetValueOrDefault("--predictions"),
            values.GetValueOrDefault("--keep"),
            values.GetValueOrDefault("--pictures"),
            values.GetValueOrDefault("--golden"));
    }

    private static AssessLook? LookOf(string argument)
    {
        foreach (var look in Enum.GetValues<AssessLook>())
        {
            if (look != AssessLook.Whole && string.Equals(argument, $"--{look}", StringComparison.OrdinalIgnoreCase))
            {
                return look;
            }
        }

        return null;
    }
}
