using System.Collections.Immutable;
using System.Text.Json;

namespace InscriptionLab.Surveys;

/// <summary>One line of a survey's journal: the head, the beginning of a photo, or its end.</summary>
internal sealed record JournalEntry
{
    /// <summary>Gets the settings of the survey: only in the head.</summary>
    public string? Settings { get; init; }

    /// <summary>Gets the file whose examination begins.</summary>
    public string? Begins { get; init; }

    /// <summary>Gets the file that is done.</summary>
    public string? File { get; init; }

    public long Bytes { get; init; }

    public long ChangedAt { get; init; }

    public string? Sha256 { get; init; }

    /// <summary>Gets a value indicating whether the same bytes were examined under another name.</summary>
    public bool Same { get; init; }

    /// <summary>Gets why the file could not be examined; null where it could.</summary>
    public string? Fault { get; init; }

    /// <summary>Gets a value indicating whether the fault may pass, so that the next run tries the file again.</summary>
    public bool MayPass { get; init; }

    public string? Outcome { get; init; }

    public string? Text { get; init; }

    public string? NearestForm { get; init; }

    public string? NearestMaker { get; init; }

    public string? NearestStatus { get; init; }

    public ImmutableArray<string> Warnings { get; init; } = [];

    public ulong PerceptualHash { get; init; }

    public JsonElement? Record { get; init; }

    /// <summary>Makes the line of a photo that was examined.</summary>
    internal static JournalEntry Of(SurveyFile file, string sha256, PhotoResult result)
    {
        using var record = JsonDocument.Parse(result.Record);
        return About(file, sha256) with
        {
            Outcome = result.Outcome,
            Text = result.Text,
            NearestForm = result.NearestForm,
            NearestMaker = result.NearestMaker,
            NearestStatus = result.NearestStatus,
            Warnings = result.Warnings,
            PerceptualHash = result.PerceptualHash,
            Record = record.RootElement.Clone(),
        };
    }

    /// <summary>Makes the line of a file before anything else is known of it.</summary>
    internal static JournalEntry About(SurveyFile file, string? sha256) => new() { File = file.Path, Bytes = file.Bytes, ChangedAt = file.ChangedAt, Sha256 = sha256 };
}
