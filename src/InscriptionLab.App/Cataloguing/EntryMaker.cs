using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Cells;
using InscriptionLab.Likeness;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Turns examinations into entries of the catalogue.</summary>
/// <param name="models">Models that read.</param>
/// <param name="list">List that was compared with.</param>
/// <param name="clock">The clock.</param>
internal sealed class EntryMaker(ImmutableArray<ModelFact> models, ReferenceList list, TimeProvider clock)
{
    /// <summary>Gives the entry of one examination.</summary>
    /// <param name="examination">The examination.</param>
    /// <param name="objectKey">The object; null to name it after the photo.</param>
    /// <param name="offeredAs">Name under which it is offered; null where unknown.</param>
    internal CatalogueEntry Of(Examination examination, string? objectKey, string? offeredAs) => new(
        EntryKind.Examination,
        objectKey ?? examination.Photo.Sha256,
        Facts(examination.Photo),
        Versions(),
        clock.GetUtcNow(),
        JsonLines.LineOf(RecordMaker.Of(examination)),
        [.. examination.Reading.Lines.Select(Mark)],
        [],
        offeredAs);

    /// <summary>Gives the entry of several photos read together; it hangs on the first of them.</summary>
    internal CatalogueEntry Of(SetExamination set, string? objectKey) => new(
        EntryKind.SetExamination,
        objectKey ?? set.Members[0].Photo.Sha256,
        Facts(set.Members[0].Photo),
        Versions(),
        clock.GetUtcNow(),
        JsonLines.LineOf(RecordMaker.Of(set)),
        [.. set.Reading.Lines.Select(Mark)],
        [])
    {
        Pictures = [.. SetPictures.ToKeep(set)],
    };

    /// <summary>Gives the entry of a measured cell.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cell">What was measured.</param>
    /// <param name="record">The record as it is written.</param>
    /// <param name="objectKey">The object; null to name it after the photo.</param>
    internal CatalogueEntry Of(Photo photo, CellMeasurement cell, string record, string? objectKey) => new(
        EntryKind.Measurement,
        objectKey ?? photo.Sha256,
        Facts(photo),
        Versions() with { List = string.Empty, ListSha256 = string.Empty },
        clock.GetUtcNow(),
        record,
        [],
        [.. cell.Circles.Select(circle => new MeasurementEntry(
            RoleOf(circle.Role),
            circle.Diameter.Value.Millimetres,
            circle.Diameter.ExpandedUncertainty.Millimetres,
            circle.Diameter.CoverageFactor,
            cell.Scale.Source,
            circle.ToStatement()))]);

    /// <summary>Gives what makes this program's results differ from another's, in one line.</summary>
    internal string Settings() => string.Join("; ", Versions().Program, Versions().Model, list.Name, list.Sha256);

    /// <summary>Gives what makes the entries.</summary>
    internal EntryVersions Versions() => new(
        ProgramFacts.NameAndVersion,
        models.IsEmpty ? "none" : string.Join(' ', models.Select(model => $"{model.Name}@{model.Sha256}")),
        list.Name,
        list.Sha256);

    private static PhotoFacts Facts(Photo photo) => new(photo.File, photo.Sha256, photo.Gray.Width, photo.Gray.Height, PerceptualHash.Of(photo.Gray));

    private static MarkEntry Mark(LineReading line, int index) => new(
        index,
        line.Line.Crop,
        [.. line.Letters.Where(letter => !letter.IsSpace).Select(letter => Box(letter.InCrop))]);

    private static ImmutableArray<double> Box(Quad quad)
    {
        IReadOnlyList<PixelPoint> corners = [quad.TopLeft, quad.TopRight, quad.BottomRight, quad.BottomLeft];
        return
        [
            Math.Round(corners.Min(corner => corner.X), 1),
            Math.Round(corners.Min(corner => corner.Y), 1),
            Math.Round(corners.Max(corner => corner.X), 1),
            Math.Round(corners.Max(corner => corner.Y), 1),
        ];
    }

    private static string RoleOf(CircleRole role) => role switch
    {
        CircleRole.Outer => "outer",
        CircleRole.Clear => "clear",
        _ => "stop",
    };
}
