using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>What a user does by hand. Each step is kept with name and time and can be undone; the machine's reading is never touched.</summary>
public sealed class Desk
{
    private readonly Func<CatalogueContext> _newContext;
    private readonly TimeProvider _clock;

    internal Desk(Func<CatalogueContext> newContext, TimeProvider clock)
    {
        _newContext = newContext;
        _clock = clock;
    }

    /// <summary>Lays a correction over a line.</summary>
    /// <param name="examination">Number of the examination.</param>
    /// <param name="line">The line, from 0.</param>
    /// <param name="becomes">What the user reads.</param>
    /// <param name="by">The user.</param>
    /// <param name="reason">Why.</param>
    /// <exception cref="InscriptionLabException">There is no such line.</exception>
    public void Correct(long examination, int line, string becomes, string by, string reason)
    {
        ArgumentNullException.ThrowIfNull(becomes);
        Named(by);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var row = context.Examinations.Include(known => known.Lines).Include(known => known.Corrections).SingleOrDefault(known => known.Id == examination)
            ?? throw NoExamination(examination);
        var target = row.Lines.SingleOrDefault(known => known.Position == line)
            ?? throw new InscriptionLabException($"Examination {examination} has no line {line + 1}; it has {row.Lines.Count}.");
        var correction = new CorrectionRow
        {
            ExaminationId = examination,
            Line = line,
            Was = target.Corrected ?? target.Text,
            Becomes = becomes,
            ByWhom = by,
            MadeAt = _clock.GetUtcNow(),
            Reason = reason,
        };
        row.Corrections.Add(correction);
        context.SaveChanges();
        ReadingNow.Apply(target, row.Corrections);
        Note(context, by, ChangeKind.Corrected, correction.Id, null, $"Line {line + 1} of examination {examination} was read as \"{becomes}\".");
        context.SaveChanges();
        transaction.Commit();
    }

    /// <summary>Sets what the catalogue says of an object; null leaves a field as it is.</summary>
    /// <exception cref="InscriptionLabException">There is no such object.</exception>
    public void Describe(string key, string? title, string? note, string? offeredAs, string by)
    {
        Named(by);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var row = ObjectOf(context, key);
        Note(context, by, ChangeKind.Described, row.Id, JsonSerializer.Serialize(new[] { row.Title, row.Note, row.OfferedAs }), $"Object {key} was described.");
        (row.Title, row.Note, row.OfferedAs) = (title ?? row.Title, note ?? row.Note, offeredAs ?? row.OfferedAs);
        context.SaveChanges();
        transaction.Commit();
    }

    /// <summary>Lays what persons saw on an object itself over what stands there: to each question the latest answer counts, the earlier ones stay with who gave them.</summary>
    /// <param name="key">The object.</param>
    /// <param name="seen">Answers, each with its person and time; one that stands already changes nothing.</param>
    /// <param name="open">Questions that are open again.</param>
    /// <param name="by">Who keeps them.</param>
    /// <returns>True where something changed.</returns>
    /// <exception cref="InscriptionLabException">There is no such object.</exception>
    public bool Observe(string key, IReadOnlyCollection<ObservationEntry> seen, IReadOnlyCollection<string> open, string by)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(open);
        Named(by);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var row = ObjectOf(context, key);
        if (ObservationLayer.Lay(context, row.Id, seen, open, _clock.GetUtcNow()) is not { } step)
        {
            return false;
        }

        Note(context, by, ChangeKind.Observed, row.Id, JsonSerializer.Serialize(step), $"What was seen on object {key} was kept.");
        context.SaveChanges();
        transaction.Commit();
        return true;
    }

    /// <summary>Puts an object into the trash, where searches do not find it, or takes it out again.</summary>
    /// <exception cref="InscriptionLabException">There is no such object.</exception>
    public void Trash(string key, bool trashed, string by)
    {
        Named(by);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var row = ObjectOf(context, key);
        if ((row.TrashedAt is not null) == trashed)
        {
            throw new InscriptionLabException(trashed ? $"Object {key} is in the trash already." : $"Object {key} is not in the trash.");
        }

        row.TrashedAt = trashed ? _clock.GetUtcNow() : null;
        Note(context, by, trashed ? ChangeKind.ObjectTrashed : ChangeKind.ObjectRestored, row.Id, null, trashed ? $"Object {key} went into the trash." : $"Object {key} came out of the trash.");
        context.SaveChanges();
        transaction.Commit();
    }

    /// <summary>Hangs a photo on another object, which is made where it is not there.</summary>
    /// <exception cref="InscriptionLabException">There is no such photo.</exception>
    public void MovePhoto(string sha256, string key, string by)
    {
        Named(by);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var photo = context.Photos.SingleOrDefault(row => row.Sha256 == sha256) ?? throw new InscriptionLabException($"The catalogue has no photo {sha256}; ./lab catalogue show EXAMINATION gives the SHA-256 of its photo.");
        var target = context.Objects.SingleOrDefault(row => row.Key == key) ?? context.Objects.Add(new ObjectRow { Key = key, CreatedAt = _clock.GetUtcNow() }).Entity;
        Note(context, by, ChangeKind.PhotoMoved, photo.Id, JsonSerializer.Serialize(photo.ObjectId), $"Photo {photo.File} was hung on object {key}.");
        photo.Object = target;
        context.SaveChanges();
        transaction.Commit();
    }

    /// <summary>Undoes the latest step that is not undone yet.</summary>
    /// <returns>What was undone, in words; null where nothing is left to undo.</returns>
    public string? Undo()
    {
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        var change = context.Changes.Where(row => row.UndoneAt == null).OrderByDescending(row => row.Id).FirstOrDefault();
        if (change is null)
        {
            return null;
        }

        TakeBack(context, change);
        change.UndoneAt = _clock.GetUtcNow();
        context.SaveChanges();
        transaction.Commit();
        return change.Sentence;
    }

    /// <summary>Gives the steps of users, the latest first.</summary>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<(DateTimeOffset At, string By, string Sentence, bool Undone)> Steps(int most)
    {
        using var context = _newContext();
        return [.. context.Changes.AsNoTracking().OrderByDescending(row => row.Id).Take(most).AsEnumerable().Select(row => (row.MadeAt, row.ByWhom, row.Sentence, row.UndoneAt is not null))];
    }

    private void TakeBack(CatalogueContext context, ChangeRow change)
    {
        var now = _clock.GetUtcNow();
        switch (change.Kind)
        {
            case ChangeKind.Added:
                context.Examinations.Single(row => row.Id == change.Target).TrashedAt = now;
                break;
            case ChangeKind.Corrected:
                var correction = context.Corrections.Single(row => row.Id == change.Target);
                correction.WithdrawnAt = now;
                var examination = context.Examinations.Include(row => row.Lines).Include(row => row.Corrections).Single(row => row.Id == correction.ExaminationId);
                ReadingNow.Apply(examination.Lines.Single(row => row.Position == correction.Line), examination.Corrections);
                break;
            case ChangeKind.Described:
                var described = context.Objects.Single(row => row.Id == change.Target);
                var before = JsonSerializer.Deserialize<string?[]>(change.Before!)!;
                (described.Title, described.Note, described.OfferedAs) = (before[0], before[1], before[2]);
                break;
            case ChangeKind.Observed:
                ObservationLayer.TakeBack(context, change.Before!, now);
                break;
            case ChangeKind.ObjectTrashed:
                context.Objects.Single(row => row.Id == change.Target).TrashedAt = null;
                break;
            case ChangeKind.ObjectRestored:
                context.Objects.Single(row => row.Id == change.Target).TrashedAt = now;
                break;
            case ChangeKind.PhotoMoved:
                context.Photos.Single(row => row.Id == change.Target).ObjectId = JsonSerializer.Deserialize<long>(change.Before!);
                break;
            default:
                throw new InscriptionLabException($"The step \"{change.Sentence}\" cannot be undone by this version of InscriptionLab.");
        }
    }

    private void Note(CatalogueContext context, string by, string kind, long target, string? before, string sentence) =>
        context.Changes.Add(new ChangeRow { MadeAt = _clock.GetUtcNow(), ByWhom = by, Kind = kind, Target = target, Before = before, Sentence = sentence });

    private static ObjectRow ObjectOf(CatalogueContext context, string key) =>
        context.Objects.SingleOrDefault(row => row.Key == key) ?? throw new InscriptionLabException($"The catalogue has no object {key}; ./lab catalogue find lists what there is.");

    private static InscriptionLabException NoExamination(long number) => new($"The catalogue has no examination {number}; ./lab catalogue find lists what there is.");

    private static void Named(string by)
    {
        if (string.IsNullOrWhiteSpace(by))
        {
            throw new InscriptionLabException("A change needs a name: say who you are with --by NAME.");
        }
    }
}
