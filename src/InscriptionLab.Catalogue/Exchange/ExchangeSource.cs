using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Exchange;

/// <summary>Reads objects out of a catalogue to be handed on. What lies in the trash stays there.</summary>
public static class ExchangeSource
{
    /// <summary>Gives the objects one by one, in the order of their names.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="key">One object; null for all.</param>
    /// <exception cref="InscriptionLabException">There is no such object.</exception>
    public static IEnumerable<ExchangeObject> Objects(Catalogue catalogue, string? key) => Objects(catalogue, key, null);

    /// <summary>Gives some objects one by one, in the order of their names.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="key">One object; null for all.</param>
    /// <param name="some">Names of the objects that are wanted; null for all.</param>
    internal static IEnumerable<ExchangeObject> Objects(Catalogue catalogue, string? key, IReadOnlySet<string>? some)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        List<long> numbers;
        using (var context = catalogue.NewContext())
        {
            numbers = [.. context.Objects.Where(row => row.TrashedAt == null && (key == null || row.Key == key)).OrderBy(row => row.Key).Select(row => new { row.Id, row.Key }).AsEnumerable().Where(row => some is null || some.Contains(row.Key)).Select(row => row.Id)];
        }

        if (key is not null && numbers.Count == 0)
        {
            throw new InscriptionLabException($"The catalogue has no object {key}; ./lab catalogue find lists what there is.");
        }

        return numbers.Select(number => Load(catalogue, number));
    }

    /// <summary>Gives how many objects <see cref="Objects(Catalogue, string?)"/> hands out.</summary>
    internal static int Count(Catalogue catalogue, string? key)
    {
        using var context = catalogue.NewContext();
        return context.Objects.Count(row => row.TrashedAt == null && (key == null || row.Key == key));
    }

    /// <summary>Gives the names of the objects that examinations belong to.</summary>
    internal static HashSet<string> KeysOf(Catalogue catalogue, IReadOnlySet<long> examinations)
    {
        using var context = catalogue.NewContext();
        return [.. context.Examinations.Select(row => new { row.Id, row.Photo!.Object!.Key }).AsEnumerable().Where(row => examinations.Contains(row.Id)).Select(row => row.Key)];
    }

    private static ExchangeObject Load(Catalogue catalogue, long number)
    {
        using var context = catalogue.NewContext();
        var row = context.Objects.AsNoTracking().Include(known => known.Observations).Single(known => known.Id == number);
        var photos = context.Photos.AsNoTracking().AsSplitQuery()
            .Where(photo => photo.ObjectId == number)
            .Include(photo => photo.Examinations).ThenInclude(examination => examination.Lines).ThenInclude(line => line.Mark)
            .Include(photo => photo.Examinations).ThenInclude(examination => examination.Measurements)
            .Include(photo => photo.Examinations).ThenInclude(examination => examination.Corrections)
            .OrderBy(photo => photo.File)
            .ThenBy(photo => photo.Id)
            .ToList();
        return new ExchangeObject(row.Key, row.Title, row.Note, row.OfferedAs, [.. photos.Select(Of)]) { Observations = [.. ObservationLayer.Standing(row.Observations)] };
    }

    private static ExchangePhoto Of(PhotoRow row)
    {
        var reading = Latest(row, EntryKind.Examination);
        var measuring = Latest(row, EntryKind.Measurement);
        var joint = Latest(row, EntryKind.SetExamination);
        return new ExchangePhoto(
            row.Sha256,
            row.File,
            row.Width,
            row.Height,
            reading is null ? null : Of(reading),
            measuring is null ? null : Of(measuring),
            measuring is null ? [] : [.. measuring.Measurements.OrderBy(measured => measured.Id).Select(measured => new MeasurementEntry(measured.Role, measured.ValueMm, measured.ExpandedMm, measured.CoverageFactor, measured.Scale, measured.Statement))])
        {
            Joint = joint is null ? null : Of(joint),
        };
    }

    private static ExaminationRow? Latest(PhotoRow row, string kind) =>
        row.Examinations.Where(examination => examination.Kind == kind && examination.TrashedAt is null).OrderBy(examination => examination.MadeAt).ThenBy(examination => examination.Id).LastOrDefault();

    private static ExchangeExamination Of(ExaminationRow row) => new(
        row.Uid,
        row.MadeAt,
        new EntryVersions(row.Program, row.Model, row.List, row.ListSha256),
        RecordContent.Parse(row.Record),
        [.. row.Lines.OrderBy(line => line.Position).Select(line => Of(line, row.Corrections))],
        row.Record)
    {
        Number = row.Id,
    };

    private static ExchangeLine Of(LineRow line, IEnumerable<CorrectionRow> corrections)
    {
        var correction = corrections.Where(row => row.Line == line.Position && row.WithdrawnAt is null).OrderBy(row => row.Id).LastOrDefault();
        return new ExchangeLine(
            line.Id,
            line.Position,
            line.Text,
            RecordLine.LettersOf(line.Letters),
            correction is null ? null : new LineCorrection(correction.Becomes, correction.ByWhom, correction.MadeAt, correction.Reason),
            line.Mark is { } mark ? [.. mark.Picture] : [],
            line.Mark is { } boxed ? MarkEntry.BoxesOf(boxed.Boxes) : []);
    }
}
