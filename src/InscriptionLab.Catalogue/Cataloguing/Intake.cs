using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>Adds work to a catalogue, each entry whole or not at all, and the same work only once.</summary>
public sealed class Intake
{
    /// <summary>How often an entry is tried again where another program added the same object, photo or work at the same moment.</summary>
    private const int Tries = 5;

    private static readonly MarkEmbedder Embedder = new(new MarkEmbedderOptions());

    private readonly Func<CatalogueContext> _newContext;
    private readonly TimeProvider _clock;

    internal Intake(Func<CatalogueContext> newContext, TimeProvider clock)
    {
        _newContext = newContext;
        _clock = clock;
    }

    /// <summary>Adds one entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="by">Who adds it.</param>
    /// <returns>True where it was added, false where the catalogue has it already.</returns>
    /// <exception cref="InscriptionLabException">The record is none of this program's, or the database refuses it.</exception>
    public bool Add(CatalogueEntry entry, string by)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var content = RecordContent.Parse(entry.Record);
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return Add(entry, content, by);
            }
            catch (DbUpdateException problem)
            {
                if (attempt == Tries)
                {
                    throw new InscriptionLabException($"The catalogue did not take {entry.Photo.File}: {(problem.InnerException ?? problem).Message}", problem);
                }
            }
        }
    }

    /// <summary>Says whether the catalogue has the examination of a photo by these versions already.</summary>
    public bool Has(string sha256, EntryVersions versions)
    {
        ArgumentNullException.ThrowIfNull(versions);
        using var context = _newContext();
        var fingerprint = Fingerprint.Of(EntryKind.Examination, sha256, versions);
        return context.Examinations.Any(row => row.Fingerprint == fingerprint);
    }

    /// <summary>Gives the number of the examination that an entry became; null where the catalogue has none of it.</summary>
    public long? NumberOf(CatalogueEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        using var context = _newContext();
        var fingerprint = Fingerprint.Of(entry);
        return context.Examinations.Where(row => row.Fingerprint == fingerprint).Select(row => (long?)row.Id).SingleOrDefault();
    }

    /// <summary>Says whether a photo is noted as one that could not be examined.</summary>
    public bool Refused(string sha256)
    {
        using var context = _newContext();
        return context.Refusals.Any(row => row.Sha256 == sha256);
    }

    /// <summary>Says whether the database answers.</summary>
    public bool Answers()
    {
        using var context = _newContext();
        return context.Database.CanConnect();
    }

    /// <summary>Notes a file that could not be examined; a later note on the same file takes the place of the earlier one.</summary>
    /// <param name="file">The file.</param>
    /// <param name="sha256">Hash of its bytes; null where they could not be read.</param>
    /// <param name="sentence">What is wrong with it.</param>
    /// <returns>True where the note was written.</returns>
    public bool Refuse(string file, string? sha256, string sentence)
    {
        using var context = _newContext();
        var row = context.Refusals.SingleOrDefault(known => known.File == file);
        if (row is null)
        {
            row = new RefusalRow { File = file, Sentence = sentence };
            context.Refusals.Add(row);
        }

        (row.Sha256, row.Sentence, row.MadeAt) = (sha256, sentence, _clock.GetUtcNow());
        return context.SaveChanges() > 0;
    }

    private bool Add(CatalogueEntry entry, RecordContent content, string by)
    {
        using var context = _newContext();
        var fingerprint = Fingerprint.Of(entry);
        if (context.Examinations.SingleOrDefault(row => row.Fingerprint == fingerprint) is { } known)
        {
            return TakeOutOfTrash(context, known, entry, by);
        }

        using var transaction = context.Database.BeginTransaction();
        var examination = RowOf(entry, content, fingerprint);
        examination.Photo = PhotoOf(context, entry);
        context.Examinations.Add(examination);
        context.SaveChanges();
        Note(context, examination, entry, by);
        context.SaveChanges();
        transaction.Commit();
        return true;
    }

    private bool TakeOutOfTrash(CatalogueContext context, ExaminationRow known, CatalogueEntry entry, string by)
    {
        if (known.TrashedAt is null)
        {
            return false;
        }

        known.TrashedAt = null;
        Note(context, known, entry, by);
        context.SaveChanges();
        return true;
    }

    private void Note(CatalogueContext context, ExaminationRow examination, CatalogueEntry entry, string by) => context.Changes.Add(new ChangeRow
    {
        MadeAt = _clock.GetUtcNow(),
        ByWhom = by,
        Kind = ChangeKind.Added,
        Target = examination.Id,
        Sentence = $"{entry.Photo.File} was added.",
    });

    private PhotoRow PhotoOf(CatalogueContext context, CatalogueEntry entry)
    {
        var now = _clock.GetUtcNow();
        if (context.Photos.SingleOrDefault(row => row.Sha256 == entry.Photo.Sha256) is { } known)
        {
            return known;
        }

        var shown = context.Objects.SingleOrDefault(row => row.Key == entry.ObjectKey);
        shown ??= new ObjectRow { Key = entry.ObjectKey, CreatedAt = now, OfferedAs = entry.OfferedAs };
        return new PhotoRow
        {
            Object = shown,
            Sha256 = entry.Photo.Sha256,
            File = entry.Photo.File,
            Width = entry.Photo.Width,
            Height = entry.Photo.Height,
            PerceptualHash = entry.Photo.PerceptualHash is { } hash ? unchecked((long)hash) : null,
            AddedAt = now,
        };
    }

    private ExaminationRow RowOf(CatalogueEntry entry, RecordContent content, string fingerprint)
    {
        var row = new ExaminationRow
        {
            Uid = Guid.CreateVersion7(entry.MadeAt).ToString(),
            Kind = entry.Kind,
            MadeAt = entry.MadeAt,
            AddedAt = _clock.GetUtcNow(),
            Program = entry.Versions.Program,
            Model = entry.Versions.Model,
            List = entry.Versions.List,
            ListSha256 = entry.Versions.ListSha256,
            Fingerprint = fingerprint,
            Outcome = content.Outcome,
            DiameterPx = content.DiameterPx,
            RecordSha256 = Fingerprint.OfText(entry.Record),
            Record = entry.Record,
        };
        AddLines(row.Lines, entry, content);
        for (var rank = 0; rank < content.Nearest.Length; rank++)
        {
            var nearest = content.Nearest[rank];
            row.Nearest.Add(new NearestRow
            {
                Rank = rank,
                Form = nearest.Form,
                Maker = nearest.Maker,
                MakerFolded = Folding.Of(nearest.Maker),
                Status = nearest.Status,
                Differences = nearest.DifferencesJson,
            });
        }

        foreach (var picture in entry.Pictures)
        {
            row.Pictures.Add(new PictureRow { Name = picture.Name, MediaType = picture.MediaType, Width = picture.Width, Height = picture.Height, Picture = [.. picture.File] });
        }

        foreach (var measured in entry.Measurements)
        {
            row.Measurements.Add(new MeasurementRow
            {
                Role = measured.Role,
                ValueMm = measured.ValueMm,
                ExpandedMm = measured.ExpandedMm,
                CoverageFactor = measured.CoverageFactor,
                Scale = measured.Scale,
                Statement = measured.Statement,
            });
        }

        return row;
    }

    private static void AddLines(ICollection<LineRow> lines, CatalogueEntry entry, RecordContent content)
    {
        for (var position = 0; position < content.Lines.Length; position++)
        {
            var line = content.Lines[position];
            var mark = entry.Marks.FirstOrDefault(known => known.Line == position);
            lines.Add(new LineRow
            {
                Position = position,
                Text = line.Text,
                Folded = Folding.Of(line.Text),
                Letters = line.LettersJson,
                Mark = mark is null ? null : new MarkRow
                {
                    Embedding = Array.ConvertAll(Embedder.Embed(mark.Picture), value => unchecked((byte)value)),
                    Boxes = JsonSerializer.Serialize(mark.Boxes, CatalogueJson.Default.ImmutableArrayImmutableArrayDouble),
                    Picture = GrayPng.Write(mark.Picture),
                },
            });
        }
    }
}
