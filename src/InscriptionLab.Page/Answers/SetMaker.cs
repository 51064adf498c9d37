using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.Page.Answers;

/// <summary>Turns what photos gave together into what the page shows.</summary>
internal static class SetMaker
{
    /// <summary>Name of the picture over which a lamp can be moved.</summary>
    internal const string Relight = "relight";

    /// <summary>Name of the picture of heights.</summary>
    internal const string Grooves = "grooves";

    /// <summary>Name of the strip that photos of a turned tube were joined to.</summary>
    internal const string Strip = "strip";

    /// <summary>Longest side of the picture to relight, in pixels: each movement of the lamp lights every pixel again.</summary>
    private const int LongestSide = 1000;

    internal static JointAnswer Of(JointState state) => new(
        state.IsWorking,
        [.. state.Sets.Select(Of)],
        [.. new[] { state.Problem, state.Unlike }.OfType<string>()]);

    /// <summary>Gives a picture as a file; null where the set has none of that name.</summary>
    internal static (byte[] File, string Type)? Picture(JointSet set, string name)
    {
        var examined = set.Examination;
        return (name, examined.Relief, examined.Mosaic) switch
        {
            (Relight, { Kind: ReliefKind.Normals } relief, _) => (PictureEncoder.ToPng(ReliefCut.Round(relief, examined.Reading).Of(ReliefPictures.ForRelighting(relief)), LongestSide), "image/png"),
            (Grooves, { } relief, _) => (PictureEncoder.ToJpeg(ReliefCut.Round(relief, examined.Reading).Of(ReliefPictures.Grooves(relief))), "image/jpeg"),
            (Strip, _, { } mosaic) => (PictureEncoder.ToJpeg(mosaic.Image), "image/jpeg"),
            _ => null,
        };
    }

    private static SetAnswer Of(JointSet set)
    {
        var examined = set.Examination;
        return new SetAnswer(
            set.Key,
            Words.For(examined.Kind),
            PaperSetMaker.TitleOf(examined.Kind, examined.Members.Length),
            [.. examined.Members.Select(member => Path.GetFileName(member.Photo.File))],
            examined.Reading.Reader,
            [.. examined.Reading.Lines.Select((line, i) => AnswerMaker.Of(WorkedLine.Found(System.FormattableString.Invariant($"line{i + 1}"), line, null, set.Key), null))],
            [.. examined.Reading.Style.Select(style => new ChanceAnswer(style.Style, style.Probability.Value))],
            FindingMaker.Of(examined.Finding, examined.Evidence),
            examined.Reasons,
            [.. Pictures(set)]);
    }

    private static IEnumerable<SetPictureAnswer> Pictures(JointSet set)
    {
        if (set.Examination.Relief is { } relief)
        {
            var cut = ReliefCut.Round(relief, set.Examination.Reading);
            if (relief.Kind == ReliefKind.Normals)
            {
                yield return new SetPictureAnswer(Relight, [cut.Width, cut.Height]);
            }

            yield return new SetPictureAnswer(Grooves, [cut.Width, cut.Height]);
        }

        if (set.Examination.Mosaic is { } mosaic)
        {
            yield return new SetPictureAnswer(Strip, [mosaic.Image.Width, mosaic.Image.Height]);
        }
    }
}
