using System.Linq;
using System.Threading;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Likeness;
using InscriptionLab.References;
using InscriptionLab.Surveys;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.App.Surveying;

/// <summary>One worker's examiner: the whole flow, its models shared with the other workers.</summary>
internal sealed class ProgramExaminer : IPhotoExaminer
{
    /// <summary>Who adds what a survey adds.</summary>
    internal const string By = "survey";

    private readonly Examiner _examiner;
    private readonly EntryMaker _entries;
    private readonly int _thumbnailSide;

    internal ProgramExaminer(Composition composition, ReferenceList list, int thumbnailSide)
    {
        _examiner = composition.Examiner(list);
        _entries = new EntryMaker(composition.Models, list, composition.Clock);
        _thumbnailSide = thumbnailSide;
    }

    public PhotoResult Examine(SurveyFile file, CancellationToken cancel)
    {
        var examination = _examiner.Examine(file.Path, cancel);
        var nearest = examination.Finding.Nearest is [var first, ..] ? first : null;
        return new PhotoResult(
            Words.For(examination.Finding.Outcome),
            string.Join(" / ", examination.Reading.Lines.Select(line => line.Text)),
            nearest?.Form.Form ?? string.Empty,
            nearest?.Form.Maker ?? string.Empty,
            nearest is null ? string.Empty : Words.For(nearest.Form.Status),
            examination.Warnings,
            PerceptualHash.Of(examination.Photo.Gray),
            JsonLines.LineOf(RecordMaker.Of(examination)),
            [.. PictureEncoder.ToJpeg(examination.Photo.Colour, _thumbnailSide)],
            _entries.Of(examination, file.ObjectKey, file.OfferedAs));
    }

    public void Dispose()
    {
        // The models belong to the program.
    }
}
