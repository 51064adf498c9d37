using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>Finds examinations by what they say. A line is found by the machine's reading and by its correction alike.</summary>
public sealed class Search
{
    private const string Space = " ";
    private readonly Func<CatalogueContext> _newContext;

    internal Search(Func<CatalogueContext> newContext) => _newContext = newContext;

    /// <summary>Searches.</summary>
    /// <param name="query">What is looked for.</param>
    /// <returns>The nearest spelling first where letters may differ, then the newest examination first.</returns>
    /// <exception cref="InscriptionLabException">The query cannot be understood.</exception>
    public ImmutableArray<SearchHit> Find(SearchQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        if (query.FromYear > query.ToYear)
        {
            throw new InscriptionLabException($"No year lies from {query.FromYear} to {query.ToYear}: give the earlier one first.");
        }

        using var context = _newContext();
        var narrowed = Narrowed(context, query);
        if (query.Near is null && query.Pattern is null)
        {
            return Hits(context, [.. narrowed.OrderByDescending(row => row.MadeAt).ThenByDescending(row => row.Id).Select(row => row.Id).Take(query.Most).AsEnumerable().Select(id => (id, 0))]);
        }

        return Hits(context, [.. Matching(narrowed, query).OrderBy(hit => hit.Edits).ThenByDescending(hit => hit.Id).Take(query.Most)]);
    }

    /// <summary>Gives the examination that a line belongs to.</summary>
    /// <param name="line">Number of the line.</param>
    public SearchHit? OfLine(long line)
    {
        using var context = _newContext();
        var ids = context.Lines.Where(row => row.Id == line).Select(row => row.ExaminationId).ToList();
        return Hits(context, [.. ids.Select(id => (id, 0))]).FirstOrDefault();
    }

    /// <summary>Gives the record of an examination exactly as it was kept, or null where there is none.</summary>
    /// <param name="examination">Number of the examination.</param>
    public string? RecordOf(long examination)
    {
        using var context = _newContext();
        return context.Examinations.Where(row => row.Id == examination).Select(row => row.Record).SingleOrDefault();
    }

    /// <summary>Gives the object that an examination belongs to, and what persons saw on it; null where there is none.</summary>
    /// <param name="examination">Number of the examination.</param>
    public (string Key, string? Title, ImmutableArray<ObservationEntry> Seen)? ObjectOf(long examination)
    {
        using var context = _newContext();
        var shown = context.Examinations.AsNoTracking().Where(row => row.Id == examination).Select(row => new { row.Photo!.Object!.Key, row.Photo.Object.Title, Observations = row.Photo.Object.Observations.ToList() }).SingleOrDefault();
        return shown is null ? null : (shown.Key, shown.Title, [.. ObservationLayer.Standing(shown.Observations)]);
    }

    /// <summary>Gives the name of the object on which a photo hangs; null where the catalogue does not have the photo.</summary>
    /// <param name="sha256">Hash of the photo's bytes.</param>
    public string? KeyOfPhoto(string sha256)
    {
        using var context = _newContext();
        return context.Photos.Where(row => row.Sha256 == sha256).Select(row => row.Object!.Key).SingleOrDefault();
    }

    /// <summary>Gives the pictures that an examination has, without their files.</summary>
    /// <param name="examination">Number of the examination.</param>
    public ImmutableArray<(string Name, int Width, int Height)> PicturesOf(long examination)
    {
        using var context = _newContext();
        return [.. context.Pictures.Where(row => row.ExaminationId == examination).OrderBy(row => row.Id).Select(row => new { row.Name, row.Width, row.Height }).AsEnumerable().Select(row => (row.Name, row.Width, row.Height))];
    }

    /// <summary>Gives a picture of an examination; null where it has none of that name.</summary>
    /// <param name="examination">Number of the examination.</param>
    /// <param name="name">Its name.</param>
    public PictureEntry? PictureOf(long examination, string name)
    {
        using var context = _newContext();
        return context.Pictures.AsNoTracking().SingleOrDefault(row => row.ExaminationId == examination && row.Name == name) is { } found
            ? new PictureEntry(found.Name, found.MediaType, found.Width, found.Height, [.. found.Picture])
            : null;
    }

    /// <summary>Gives the perceptual hashes of all photos that have one, by the hash of their bytes.</summary>
    internal Dictionary<string, ulong> PerceptualHashes()
    {
        using var context = _newContext();
        return context.Photos.Where(row => row.PerceptualHash != null).Select(row => new { row.Sha256, row.PerceptualHash }).ToDictionary(row => row.Sha256, row => unchecked((ulong)row.PerceptualHash!.Value), StringComparer.Ordinal);
    }

    private static IQueryable<ExaminationRow> Narrowed(CatalogueContext context, SearchQuery query)
    {
        var rows = context.Examinations.AsNoTracking();
        rows = query.InTrash
            ? rows.Where(row => row.TrashedAt != null || row.Photo!.Object!.TrashedAt != null)
            : rows.Where(row => row.TrashedAt == null && row.Photo!.Object!.TrashedAt == null);
        rows = query.ObjectKey is { } key ? rows.Where(row => row.Photo!.Object!.Key == key) : rows;
        rows = query.Outcome is { } outcome ? rows.Where(row => row.Outcome == outcome) : rows;
        rows = query.From is { } from ? rows.Where(row => row.MadeAt >= from) : rows;
        rows = query.Before is { } before ? rows.Where(row => row.MadeAt < before) : rows;
        if (query.Maker is { } maker)
        {
            var folded = Folding.Of(maker);
            rows = rows.Where(row => row.Nearest.Any(nearest => nearest.Rank == 0 && nearest.MakerFolded.Contains(folded)));
        }

        if (query.FromMm is not null || query.ToMm is not null)
        {
            var (role, least, most) = (query.Role, query.FromMm ?? double.MinValue, query.ToMm ?? double.MaxValue);
            rows = rows.Where(row => row.Measurements.Any(measured => measured.Role == role && measured.ValueMm + measured.ExpandedMm >= least && measured.ValueMm - measured.ExpandedMm <= most));
        }

        rows = Seen(rows, query);
        return query.Text is { Length: > 0 } text ? WithText(rows, text) : rows;
    }

    private static IQueryable<ExaminationRow> WithText(IQueryable<ExaminationRow> rows, string text)
    {
        var folded = Folding.Of(text);
        return rows.Where(row => row.Lines.Any(line => line.Folded.Contains(folded) || line.CorrectedFolded!.Contains(folded)));
    }

    /// <summary>Narrows by what persons saw on the object itself.</summary>
    private static IQueryable<ExaminationRow> Seen(IQueryable<ExaminationRow> rows, SearchQuery query)
    {
        if (query.Feature is { } feature)
        {
            var answer = query.Answer;
            rows = rows.Where(row => row.Photo!.Object!.Observations.Any(seen => seen.WithdrawnAt == null && seen.Feature == feature && (answer == null || seen.Answer == answer)));
        }

        if (query.FromYear is not null || query.ToYear is not null)
        {
            var (from, to) = (query.FromYear ?? int.MinValue, query.ToYear ?? int.MaxValue);
            rows = rows
                .Where(row => row.Photo!.Object!.Observations.Any(seen => seen.WithdrawnAt == null && (seen.FromYear != null || seen.ToYear != null)))
                .Where(row => !row.Photo!.Object!.Observations.Any(seen => seen.WithdrawnAt == null && (seen.FromYear > to || seen.ToYear < from)));
        }

        return rows;
    }

    private static IEnumerable<(long Id, int Edits)> Matching(IQueryable<ExaminationRow> rows, SearchQuery query)
    {
        var near = query.Near is { Length: > 0 } sought ? Folding.Of(sought) : null;
        if (near is not null && (query.Edits < 0 || query.Edits >= near.Length))
        {
            throw new InscriptionLabException($"With {query.Edits} letters allowed to differ, \"{query.Near}\" would be found everywhere: give a longer word or fewer letters.");
        }

        var pattern = query.Pattern is null ? null : new LetterPattern(query.Pattern);
        var lines = rows.SelectMany(row => row.Lines).Select(line => new { line.ExaminationId, line.Folded, line.CorrectedFolded, Letters = query.Alternatives ? line.Letters : null });
        var best = new Dictionary<long, int>();
        foreach (var line in lines.AsEnumerable())
        {
            var edits = near is null ? 0 : Math.Min(NearText.Edits(near, line.Folded), line.CorrectedFolded is { } corrected ? NearText.Edits(near, corrected) : int.MaxValue);
            if ((near is null || edits <= query.Edits) && (pattern is null || Fits(pattern, line.Folded, line.CorrectedFolded, line.Letters)))
            {
                best[line.ExaminationId] = Math.Min(edits, best.GetValueOrDefault(line.ExaminationId, int.MaxValue));
            }
        }

        return best.Select(pair => (pair.Key, pair.Value));
    }

    private static bool Fits(LetterPattern pattern, string folded, string? corrected, string? letters) =>
        pattern.IsIn(Places(folded)) || (corrected is not null && pattern.IsIn(Places(corrected))) || (letters is not null && pattern.IsIn(Places(folded, letters)));

    private static List<IReadOnlyList<string>> Places(string text) => [.. text.Select(letter => (IReadOnlyList<string>)[letter.ToString()])];

    /// <summary>Gives what may stand at each place, alternatives included; spaces come from the text, because a record's letters leave them out.</summary>
    private static List<IReadOnlyList<string>> Places(string text, string lettersJson)
    {
        var letters = RecordLine.LettersOf(lettersJson);
        var places = new List<IReadOnlyList<string>>(text.Length);
        var next = 0;
        for (var walk = StringInfo.GetTextElementEnumerator(text); walk.MoveNext();)
        {
            var element = walk.GetTextElement();
            if (element == Space || next >= letters.Length)
            {
                places.Add([element]);
                continue;
            }

            var letter = letters[next++];
            places.Add([element, .. letter.Alternatives.Select(other => Folding.Of(other.Character)).Where(other => other.Length > 0)]);
        }

        return places;
    }

    private static ImmutableArray<SearchHit> Hits(CatalogueContext context, ImmutableArray<(long Id, int Edits)> found)
    {
        var ids = found.Select(hit => hit.Id).ToList();
        var rows = context.Examinations.AsNoTracking()
            .Where(row => ids.Contains(row.Id))
            .Select(row => new
            {
                row.Id,
                row.Photo!.Object!.Key,
                row.Photo.File,
                row.MadeAt,
                row.Outcome,
                Lines = row.Lines.OrderBy(line => line.Position).Select(line => line.Corrected ?? line.Text).ToList(),
                Nearest = row.Nearest.Where(nearest => nearest.Rank == 0).Select(nearest => nearest.Form).FirstOrDefault(),
                Maker = row.Nearest.Where(nearest => nearest.Rank == 0).Select(nearest => nearest.Maker).FirstOrDefault(),
            })
            .ToDictionary(row => row.Id);
        return [.. found.Where(hit => rows.ContainsKey(hit.Id)).Select(hit => rows[hit.Id] is var row
            ? new SearchHit(row.Id, row.Key, row.File, row.MadeAt, row.Outcome, string.Join(" / ", row.Lines), row.Nearest ?? string.Empty, row.Maker ?? string.Empty, hit.Edits)
            : null!)];
    }
}
