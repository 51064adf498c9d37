using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Gathering;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Turns a joint examination into what a paper shows of it.</summary>
internal static class PaperSetMaker
{
    /// <summary>Gives the heading of a set.</summary>
    internal static string TitleOf(SetKind kind, int photos) =>
        $"{Counted(photos, "photo", "photos")} read together: {(kind == SetKind.Raking ? "one view under different lamps" : "the tube turned between the photos")}";

    internal static PaperSet Of(SetExamination set) => new(TitleOf(set.Kind, set.Members.Length), [.. set.Members.Select(member => Path.GetFileName(member.Photo.File))])
    {
        Reasons = set.Reasons,
        Pictures = [.. Pictures(set)],
        Lines = [.. set.Reading.Lines.Select(line => PaperPhotoMaker.Line(line, [], null))],
        Finding = PaperPhotoMaker.Of(set.Finding),
        Evidence = EvidenceRecordMaker.Of(set.Evidence),
    };

    private static IEnumerable<PaperPicture> Pictures(SetExamination set)
    {
        if (set.Mosaic is { } mosaic)
        {
            yield return new PaperPicture(
                PictureEncoder.ToJpeg(mosaic.Image),
                mosaic.Image.Width,
                mosaic.Image.Height,
                [],
                null,
                "The surface of the tube laid flat, joined from all photos: along the tube from left to right, round it from top to bottom, one scale in both; past a full turn the first part is shown again.");
        }

        if (set.Relief is not { } relief)
        {
            yield break;
        }

        var round = ReliefCut.Round(relief, set.Reading);
        if (relief.Kind == ReliefKind.Normals)
        {
            var lit = round.Of(ReliefPictures.Lit(relief));
            yield return new PaperPicture(PictureEncoder.ToJpeg(lit), lit.Width, lit.Height, [], null, "The surface lit from the upper left, worked out from the light of the lamps and not photographed.");
        }

        var grooves = round.Of(ReliefPictures.Grooves(relief));
        yield return new PaperPicture(
            PictureEncoder.ToJpeg(grooves),
            grooves.Width,
            grooves.Height,
            [],
            null,
            relief.Kind == ReliefKind.Normals
                ? "Heights over the tube's curve, from the slopes that the lamps show: the darker, the deeper. Depths compare places of this picture; they are no millimetres."
                : "Heights over the tube's curve, from slopes in one direction: the darker, the deeper. Strokes that run along that direction do not show.");
    }
}
