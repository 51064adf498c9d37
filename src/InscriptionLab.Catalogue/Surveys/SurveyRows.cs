using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text.Json;

namespace InscriptionLab.Surveys;

/// <summary>The rows of a survey's tables, read from the journal one by one in the order of the files; only what ties rows together is held.</summary>
internal sealed class SurveyRows
{
    private readonly ImmutableArray<SurveyFile> _files;
    private readonly SurveyJournal _journal;
    private readonly string?[] _nearlySameAs;

    internal SurveyRows(ImmutableArray<SurveyFile> files, SurveyJournal journal, SurveyOptions options)
    {
        _files = files;
        _journal = journal;
        _nearlySameAs = new string?[files.Length];
        var hashes = new List<ulong>();
        var owners = new List<int>();
        for (var index = 0; index < files.Length; index++)
        {
            if (Entry(files[index], out _) is { Fault: null } entry)
            {
                hashes.Add(entry.PerceptualHash);
                owners.Add(index);
            }
        }

        var groups = NearDuplicates.Group(hashes, options.NearDuplicateBits);
        for (var index = 0; index < groups.Length; index++)
        {
            _nearlySameAs[owners[index]] = groups[index] == index ? null : files[owners[groups[index]]].Path;
        }
    }

    /// <summary>Gives the rows.</summary>
    internal IEnumerable<SurveyRow> All()
    {
        for (var index = 0; index < _files.Length; index++)
        {
            var file = _files[index];
            if (Entry(file, out var sameAs) is { } entry)
            {
                yield return Row(file, entry, sameAs, _nearlySameAs[index]);
            }
        }
    }

    /// <summary>Gives the records of the photos that were examined, each once.</summary>
    internal IEnumerable<string> Records() => _files
        .Select(file => _journal.Read(file.Path))
        .Where(entry => entry?.Record is not null)
        .Select(entry => JsonSerializer.Serialize(entry!.Record!.Value, SurveyJson.Readable.JsonElement));

    private JournalEntry? Entry(SurveyFile file, out string? sameAs)
    {
        sameAs = null;
        var entry = _journal.Read(file.Path);
        if (entry is { Same: true, Sha256: { } sha256 })
        {
            sameAs = _journal.FileOf(sha256);
            return sameAs is null ? null : _journal.Read(sameAs);
        }

        return entry;
    }

    private static SurveyRow Row(SurveyFile file, JournalEntry entry, string? sameAs, string? nearlySameAs) => new(
        file.Path,
        entry.Sha256 ?? string.Empty,
        file.ObjectKey,
        file.OfferedAs ?? string.Empty,
        entry.Fault is null ? entry.Outcome ?? string.Empty : SurveyRow.Unusable,
        entry.Text ?? string.Empty,
        entry.NearestForm ?? string.Empty,
        entry.NearestMaker ?? string.Empty,
        entry.NearestStatus ?? string.Empty,
        sameAs ?? string.Empty,
        nearlySameAs ?? string.Empty,
        entry.Fault is { } fault ? [fault] : entry.Warnings);
}
