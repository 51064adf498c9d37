using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cataloguing.Rows;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>Checks that a catalogue is whole and that its columns say what its records say.</summary>
public sealed class Health
{
    private readonly Func<CatalogueContext> _newContext;
    private readonly CatalogueAddress _address;

    internal Health(Func<CatalogueContext> newContext, CatalogueAddress address)
    {
        _newContext = newContext;
        _address = address;
    }

    /// <summary>Checks everything.</summary>
    /// <returns>One sentence for each thing that is wrong; none where the catalogue is sound.</returns>
    public ImmutableArray<string> Check()
    {
        var faults = ImmutableArray.CreateBuilder<string>();
        using var context = _newContext();
        if (_address.Kind == StoreKind.Sqlite)
        {
            faults.AddRange(context.Database.SqlQueryRaw<string>("SELECT integrity_check AS Value FROM pragma_integrity_check").AsEnumerable().Where(line => line != "ok").Select(line => $"The file is damaged: {line}."));
            faults.AddRange(context.Database.SqlQueryRaw<string>("SELECT \"table\" AS Value FROM pragma_foreign_key_check").AsEnumerable().Select(table => $"A row of {table} belongs to nothing."));
        }

        foreach (var examination in context.Examinations.AsNoTracking().Include(row => row.Lines).Include(row => row.Nearest).Include(row => row.Corrections).AsSplitQuery().OrderBy(row => row.Id).AsEnumerable())
        {
            faults.AddRange(Faults(examination).Select(fault => $"Examination {examination.Id}: {fault}"));
        }

        foreach (var mark in context.Marks.AsNoTracking().AsEnumerable())
        {
            faults.AddRange(Faults(mark).Select(fault => $"Line {mark.LineId}: {fault}"));
        }

        foreach (var picture in context.Pictures.AsNoTracking().AsEnumerable().Where(picture => !IsPicture(picture)))
        {
            faults.Add($"Examination {picture.ExaminationId}: the picture \"{picture.Name}\" is damaged.");
        }

        return faults.ToImmutable();
    }

    /// <summary>Says whether a file begins as one of its kind does: PNG (ISO/IEC 15948) or JPEG (ITU-T T.81, markers SOI and EOI).</summary>
    private static bool IsPicture(PictureRow row) => row.MediaType switch
    {
        "image/png" => row.Picture is [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..],
        _ => row.Picture is [0xFF, 0xD8, .., 0xFF, 0xD9],
    };

    private static IEnumerable<string> Faults(ExaminationRow row)
    {
        if (Fingerprint.OfText(row.Record) != row.RecordSha256)
        {
            yield return "the record was changed after it was kept.";
            yield break;
        }

        RecordContent? content = null;
        try
        {
            content = RecordContent.Parse(row.Record);
        }
        catch (InscriptionLabException)
        {
        }

        if (content is null)
        {
            yield return "the record cannot be read.";
            yield break;
        }

        var lines = row.Lines.OrderBy(line => line.Position).ToList();
        if (!lines.Select(line => line.Text).SequenceEqual(content.Lines.Select(line => line.Text)))
        {
            yield return "the lines are not those of the record.";
        }

        if (lines.Any(line => line.Folded != Folding.Of(line.Text)))
        {
            yield return "a line would not be found by its text.";
        }

        if (row.Outcome != content.Outcome || row.Nearest.Count != content.Nearest.Length)
        {
            yield return "the finding is not that of the record.";
        }

        if (lines.Any(line => line.Corrected != ReadingNow.Of(line.Position, row.Corrections)))
        {
            yield return "a correction is not shown as it was made.";
        }
    }

    private static IEnumerable<string> Faults(MarkRow mark)
    {
        var readable = true;
        try
        {
            GrayPng.Read(mark.Picture);
        }
        catch (InscriptionLabException)
        {
            readable = false;
        }

        if (!readable)
        {
            yield return "the picture is damaged.";
        }

        if (mark.Embedding is { } embedding && embedding.Length != new MarkEmbedder(new MarkEmbedderOptions()).Dimensions)
        {
            yield return "the embedding was made by another version; examine the photo again to search by likeness.";
        }
    }
}
