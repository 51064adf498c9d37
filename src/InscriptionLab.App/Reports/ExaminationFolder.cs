using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.Files;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>The folder of an examination: the page, the record, and for each photo the strip, the strip with its letters boxed, and the photo with its marks.</summary>
internal static class ExaminationFolder
{
    internal const string Page = "examination.html";
    internal const string Record = "record.json";

    /// <summary>Names a folder after the first photo.</summary>
    internal static string NameFor(string firstPhoto) => "examination-" + Path.GetFileNameWithoutExtension(firstPhoto);

    /// <summary>Writes the folder, each file whole or not at all, the record and the page last; files of an earlier examination with the same names are replaced, others are left alone.</summary>
    internal static void Write(string folder, ImmutableArray<Examination> examinations, ImmutableArray<SetExamination> sets, Provenance provenance)
    {
        Directory.CreateDirectory(folder);
        var pictures = Task.Run(() => WritePictures(folder, examinations, sets));
        var (record, page) = (ExaminationRecord.Of(examinations, sets, provenance), ExaminationPage.Of(examinations, sets, provenance));
        pictures.GetAwaiter().GetResult();
        WholeFile.Write(Path.Combine(folder, Record), record);
        WholeFile.Write(Path.Combine(folder, Page), page);
    }

    private static void WritePictures(string folder, ImmutableArray<Examination> examinations, ImmutableArray<SetExamination> sets)
    {
        for (var i = 0; i < examinations.Length; i++)
        {
            var stem = Path.GetFileNameWithoutExtension(examinations[i].Photo.File);
            WritePictures(Path.Combine(folder, examinations.Length == 1 ? stem : Invariant($"{i + 1}-{stem}")), examinations[i]);
        }

        for (var i = 0; i < sets.Length; i++)
        {
            var start = Path.Combine(folder, sets.Length == 1 ? "together" : Invariant($"together-{i + 1}"));
            if (sets[i].Mosaic is { } mosaic)
            {
                WholeFile.Write(start + "-strip.png", PictureEncoder.ToPng(mosaic.Image));
            }

            if (sets[i].Relief is { } relief)
            {
                WholeFile.Write(start + "-relief.png", PictureEncoder.ToPng(ReliefPictures.Lit(relief)));
                WholeFile.Write(start + "-normals.png", PictureEncoder.ToPng(ReliefPictures.Normals(relief)));
                WholeFile.Write(start + "-grooves.png", PictureEncoder.ToPng(ReliefPictures.Grooves(relief)));
            }
        }
    }

    private static void WritePictures(string start, Examination examination)
    {
        var letters = examination.Reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).ToList();
        var inPhoto = letters.Select(letter => new Mark([.. Drawing.Corners(letter.InPhoto)], true, MarkInk.Letter)).Concat(SurfaceMarks(examination));
        var inStrip = letters.Select(letter => StripBoxes.Of(letter, examination.Strip)).OfType<Measures.Quad>()
            .Select(box => new Mark([.. Drawing.Corners(box)], true, MarkInk.Letter));
        WholeFile.Write(start + "-strip.png", PictureEncoder.ToPng(examination.Strip.Image));
        WholeFile.Write(start + "-strip-letters.png", PictureEncoder.ToPng(examination.Strip.Image, inStrip));
        WholeFile.Write(start + "-photo-marked.jpg", PictureEncoder.ToJpeg(examination.Photo.Colour, inPhoto));
    }

    private static IEnumerable<Mark> SurfaceMarks(Examination examination)
    {
        foreach (var circle in RingOutline.Of(examination.Strip))
        {
            yield return new Mark(circle, true, MarkInk.Outline);
        }

        if (examination.Tube is not { } tube)
        {
            yield break;
        }

        yield return new Mark([tube.Axis.Start, tube.Axis.End], false, MarkInk.Axis);
        foreach (var silhouette in tube.Silhouettes)
        {
            yield return new Mark([silhouette.Start, silhouette.End], false, MarkInk.Outline);
        }
    }
}
