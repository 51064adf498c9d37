using System;
using System.Collections.Generic;
using System.Globalization;

namespace InscriptionLab.Benchmarks;

/// <summary>What is asked of the bench of surveys.</summary>
/// <param name="Count">Photos.</param>
/// <param name="Program">Folder of the published program; null for <c>./lab</c>.</param>
/// <param name="Workers">Photos at a time; null for as many as there are cores.</param>
/// <param name="Scratch">Folder for photos and results, which stay there, so that a run that was stopped goes on; null for one that is thrown away.</param>
/// <param name="Csv">File for the checkpoints; null for none.</param>
/// <param name="Every">Photos between two checkpoints; null for a tenth of all.</param>
internal sealed record SurveyArguments(int Count, string? Program, int? Workers, string? Scratch, string? Csv, int? Every)
{
    /// <summary>How it is called.</summary>
    internal const string Usage = "bench survey needs how many photos, for example ./lab bench survey 100; it takes --program FOLDER (a published program; otherwise INSCRIPTIONLAB_PROGRAM, or ./lab), --workers N, --scratch FOLDER (kept; run it again to go on), --csv FILE and --every N.";

    /// <summary>Reads the arguments; null where they are not understood.</summary>
    internal static SurveyArguments? Parse(string[] arguments)
    {
        if (arguments.Length % 2 == 0 || Number(arguments[0]) is not { } count)
        {
            return null;
        }

        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var index = 1; index < arguments.Length; index += 2)
        {
            values[arguments[index]] = arguments[index + 1];
        }

        int? Whole(string name) => values.TryGetValue(name, out var text) ? Number(text) : null;
        var (workers, every) = (Whole("--workers"), Whole("--every"));
        foreach (var name in values.Keys)
        {
            if (name is not ("--program" or "--workers" or "--scratch" or "--csv" or "--every") || (name is "--workers" && workers is null) || (name is "--every" && every is null))
            {
                return null;
            }
        }

        return new SurveyArguments(count, values.GetValueOrDefault("--program") ?? Environment.GetEnvironmentVariable("INSCRIPTIONLAB_PROGRAM"), workers, values.GetValueOrDefault("--scratch"), values.GetValueOrDefault("--csv"), every);
    }

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : null;
}
