using System;
using System.Collections.Generic;

namespace InscriptionLab.Assess;

/// <summary>What the user asks of an assessment.</summary>
/// <param name="Folder">Folder of photos with a folder <c>truth</c>.</param>
/// <param name="Json">File for the figures as JSON; null for none.</param>
/// <param name="Readme">Markdown file whose marked passage is to be written; null for none.</param>
/// <param name="Predictions">JSON Lines of <c>examine</c> and <c>measure</c> to judge in place of a new run; null to run.</param>
/// <param name="Keep">File for the JSON Lines of this run; null for none.</param>
/// <param name="Advice">True to plant faults and hold the advice against them instead.</param>
/// <param name="Tubes">True to look at the tubes alone, without reading.</param>
/// <param name="Reader">True to look at styles, probabilities and the second reader alone.</param>
/// <param name="Findings">True to hold the findings against the truth alone.</param>
/// <param name="Turns">True to hold sets of turned photos against the truth alone.</param>
/// <param name="Views">True to turn and mirror photos and look at what is said of it alone.</param>
/// <param name="Pictures">With <paramref name="Tubes"/>, folder for the photos with true and found outlines; null for none.</param>
internal sealed record AssessArguments(string Folder, string? Json, string? Readme, string? Predictions, string? Keep, bool Advice = false, bool Tubes = false, bool Reader = false, bool Findings = false, bool Turns = false, bool Views = false, string? Pictures = null)
{
    private static readonly HashSet<string> Known = new(StringComparer.Ordinal) { "--json", "--write-readme", "--predictions", "--keep", "--pictures" };

    /// <summary>Reads the arguments; gives null and one sentence where they are not understood.</summary>
    internal static AssessArguments? Parse(string[] arguments, out string problem)
    {
        string? folder = null;
        var (advice, tubes, reader, findings, turns, views) = (false, false, false, false, false, false);
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        problem = "assess needs a folder of photos with truth files, for example ./lab assess sample-images (see ./lab help assess).";
        for (var i = 0; i < arguments.Length; i++)
        {
            if (arguments[i] == "--advice")
            {
                advice = true;
            }
            else if (arguments[i] == "--tubes")
            {
                tubes = true;
            }
            else if (arguments[i] == "--reader")
            {
                reader = true;
            }
            else if (arguments[i] == "--findings")
            {
                findings = true;
            }
            else if (arguments[i] == "--turns")
            {
                turns = true;
            }
            else if (arguments[i] == "--views")
            {
                views = true;
            }
            else if (Known.Contains(arguments[i]))
            {
                if (++i == arguments.Length)
                {
                    problem = $"{arguments[i - 1]} needs a file name after it (see ./lab help assess).";
                    return null;
                }

                values[arguments[i - 1]] = arguments[i];
            }
            else if (arguments[i].StartsWith('-') || folder is not null)
            {
                problem = $"assess does not know what to do with {arguments[i]} (see ./lab help assess).";
                return null;
            }
            else
            {
                folder = arguments[i];
            }
        }

        return folder is null ? null : new AssessArguments(
            folder,
            values.GetValueOrDefault("--json"),
            values.GetValueOrDefault("--write-readme"),
            values.GetValueOrDefault("--predictions"),
            values.GetValueOrDefault("--keep"),
            advice,
            tubes,
            reader,
            findings,
            turns,
            views,
            values.GetValueOrDefault("--pictures"));
    }
}
