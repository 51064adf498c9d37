using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Gathering;
using InscriptionLab.Page.Bench;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.Page.Answers;

/// <summary>Turns what photos gave together into what the page shows.</summary>
internal static class SetMaker
{
    internal static JointAnswer Of(Piece piece)
    {
        var (state, lamps) = (piece.Together, StatedLamps.Of(piece.Corrections));
        return new JointAnswer(
            state.IsWorking,
            [.. state.Sets.Select(set => Of(set, lamps))],
            [.. new[] { state.Problem, state.Unlike }.OfType<string>()]);
    }

    /// <summary>Gives a picture as a file; null where the set has none of that name.</summary>
    internal static (byte[] File, string Type)? Picture(JointSet set, string name)
    {
        var examined = set.Program;
        return (name, examined.Relief, examined.Mosaic) switch
        {
            (SetPictures.Relight, { Kind: ReliefKind.Normals } relief, _) => (PictureEncoder.ToPng(ReliefCut.Round(relief, examined.Reading).Of(ReliefPictures.ForRelighting(relief)), SetPictures.LongestRelit), "image/png"),
            (SetPictures.Grooves, { } relief, _) => (PictureEncoder.ToJpeg(ReliefCut.Round(relief, examined.Reading).Of(ReliefPictures.Grooves(relief))), "image/jpeg"),
            (SetPictures.Strip, _, { } mosaic) => (PictureEncoder.ToJpeg(mosaic.Image), "image/jpeg"),
            _ => null,
        };
    }

    private static SetAnswer Of(JointSet set, StatedLamps lamps)
    {
        var examined = set.Examination;
        return new SetAnswer(
            set.Key,
            set.Place,
            Words.For(examined.Kind),
            PaperSetMaker.TitleOf(examined.Kind, examined.Members.Length),
            [.. examined.Members.Select(member => Path.GetFileName(member.Photo.File))],
            examined.Reading.Reader,
            [.. set.Lines.Select(line => AnswerMaker.Of(line, null))],
            [.. examined.Reading.Style.Select(style => new ChanceAnswer(style.Style, style.Probability.Value))],
            FindingMaker.Of(examined.Finding, examined.Evidence),
            CommandWords.Without(examined.Reasons),
            [.. Pictures(set)],
            examined.Kind != SetKind.Raking ? [] : [.. examined.Members.Select(member => lamps.Of(member.Photo) is { } lamp ? new[] { lamp.Side.Degrees, lamp.Height.Degrees } : null)]);
    }

    private static IEnumerable<SetPictureAnswer> Pictures(JointSet set)
    {
        if (set.Program.Relief is { } relief)
        {
            var cut = ReliefCut.Round(relief, set.Program.Reading);
            if (relief.Kind == ReliefKind.Normals)
            {
                yield return new SetPictureAnswer(SetPictures.Relight, [cut.Width, cut.Height]);
            }

            yield return new SetPictureAnswer(SetPictures.Grooves, [cut.Width, cut.Height]);
        }

        if (set.Program.Mosaic is { } mosaic)
        {
            yield return new SetPictureAnswer(SetPictures.Strip, [mosaic.Image.Width, mosaic.Image.Height]);
        }
    }
}
