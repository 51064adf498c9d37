using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.Cells;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Turns what the stages gave for one photo into what a paper shows of it.</summary>
internal static class PaperPhotoMaker
{
    /// <summary>Longest side of a photo in a paper, in pixels: 250 to the inch over the width of a printed page.</summary>
    private const int LongestSide = 1700;

    /// <summary>Corners of the polygon that stands for an ellipse.</summary>
    private const int Corners = 180;

    private static readonly LeidenTranscriber Leiden = new(new LeidenOptions());

    /// <summary>Gives an examined photo.</summary>
    internal static PaperPhoto Of(Examination examination) => new()
    {
        Name = Path.GetFileName(examination.Photo.File),
        Sha256 = examination.Photo.Sha256,
        Width = examination.Photo.Colour.Width,
        Height = examination.Photo.Colour.Height,
        Pictures = Pictures(examination.Photo, examination.Tube, examination.Strip, examination.Reading),
        Lines = [.. examination.Reading.Lines.Select(line => Line(line, [], null))],
        Finding = Of(examination.Finding),
        Evidence = EvidenceRecordMaker.Of(examination.Evidence),
        Advice = RecordMaker.Of(examination.Advice),
        Ring = RecordMaker.RingOf(examination.Ring, examination.Strip, examination.Reading),
        Sizes = [.. SizeWords.Of(examination.Sizes)],
        Warnings = examination.Warnings,
    };

    /// <summary>Gives the photo and the surface laid flat, both with the letters boxed.</summary>
    internal static ImmutableArray<PaperPicture> Pictures(Photo photo, Tube? tube, Strip strip, Reading reading)
    {
        var letters = reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace && letter.InPhoto != default).ToList();
        var pictures = ImmutableArray.CreateBuilder<PaperPicture>();
        var ring = strip.Map as RingStripMap;
        var caption = ring is not null
            ? $"The photo with the rim of the ring, how far in its face was laid flat, and its letters boxed. {RingSense.Sentence(reading, ring)} No scale bar is drawn."
            : tube is null
            ? "The photo with its letters boxed. No tube was found in it. No scale bar is drawn."
            : Invariant($"The photo with outlines and axis of the tube and its letters boxed. The tube is {LetteredPart.DiameterOf(tube, reading).Pixels:0} pixels across; no scale bar is drawn.");
        pictures.Add(new PaperPicture(
            PictureEncoder.ToJpeg(photo.Colour, LongestSide),
            photo.Colour.Width,
            photo.Colour.Height,
            [.. TubeMarks(tube), .. RingOutline.Of(strip).Select(circle => new PaperMark(circle, true)), .. letters.Select(letter => new PaperMark([.. Drawing.Corners(letter.InPhoto)], true))],
            null,
            caption));
        if (strip.Unrolled)
        {
            var boxes = letters.Select(letter => StripBoxes.Of(letter, strip)).OfType<Quad>();
            pictures.Add(new PaperPicture(
                PictureEncoder.ToJpeg(strip.Image),
                strip.Image.Width,
                strip.Image.Height,
                [.. boxes.Select(box => new PaperMark([.. Drawing.Corners(box)], true))],
                null,
                ring is not null ? "The face of the ring laid flat, cut open where its lettering leaves the widest gap. Nothing was sharpened or filled in." : Invariant($"The surface laid flat: along the tube from left to right, round it from top to bottom, one scale in both, {strip.PixelsPerDiameter:0} pixels to the tube's diameter. Nothing was sharpened or filled in.")));
        }

        return pictures.ToImmutable();
    }

    /// <summary>Gives a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="hands">For each letter who read it by hand; empty where nobody did.</param>
    /// <param name="correction">What a person reads instead; null where nobody does.</param>
    internal static PaperLine Line(LineReading line, ImmutableArray<string?> hands, string? correction) => new(
        Leiden.Text(line.Letters),
        [.. line.Letters.Select((letter, i) => new PaperLetter(
            letter.Character,
            letter.Probability.Value,
            Others(letter),
            letter.IsSpace || letter.InCrop == default ? null : Cut(line, letter.InCrop),
            hands.Length > i ? hands[i] : null))],
        correction);

    internal static PaperFinding Of(Finding finding) => new(finding.Outcome, finding.Reasons, finding.CannotDecide, finding.Retake, [.. finding.Nearest.Select(Of)]);

    /// <summary>Gives the measurement of a photo: its picture with circles and scale, and each result with its budget.</summary>
    internal static PaperPhoto Of(PhotoMeasurement measured)
    {
        var (photo, cell) = (measured.Photo, measured.Measurement);
        return new PaperPhoto
        {
            Name = Path.GetFileName(photo.File),
            Sha256 = photo.Sha256,
            Width = photo.Colour.Width,
            Height = photo.Colour.Height,
            Pictures =
            [
                Measured(
                    photo,
                    cell is null ? [] : [.. cell.Circles.Select(circle => circle.Ellipse)],
                    cell?.Scale.AtCell.PixelsPerMillimetre,
                    cell is null ? "The photo; nothing was measured in it." : $"The measured circles. Scale: {MeasurementText.ScaleWords(cell.Scale)}."),
            ],
            Measures = cell is null ? [] : [.. cell.Circles.Select(circle => new PaperMeasure(
                MeasurementText.NameOf(circle.Role),
                circle.ToStatement(),
                MeasurementText.Others(circle),
                Rows(circle.Budget)))],
            Optics = [.. (measured.Optics?.Figures ?? []).Select(figure => ImmutableArray.Create(figure.Name, Invariant($"{figure.Value:0.###}{(figure.Unit == "1" ? string.Empty : " " + figure.Unit)}"), figure.Basis))],
            OpticsNotes = [.. measured.Optics?.DayNight?.Reasons ?? [], .. measured.Optics?.Notes ?? []],
            Warnings = measured.Warnings,
        };
    }

    /// <summary>Gives the photo with circles and a bar of the scale.</summary>
    internal static PaperPicture Measured(Photo photo, ImmutableArray<PixelEllipse> circles, double? pixelsPerMillimetre, string caption) => new(
        PictureEncoder.ToJpeg(photo.Colour, LongestSide),
        photo.Colour.Width,
        photo.Colour.Height,
        [.. circles.Select(circle => new PaperMark(Polygon(circle), true))],
        pixelsPerMillimetre,
        caption);

    /// <summary>Gives the rows of a budget, the largest share first.</summary>
    internal static ImmutableArray<ImmutableArray<string>> Rows(UncertaintyBudget budget) =>
        [.. budget.Rows.OrderByDescending(row => row.Contribution).Select(row => ImmutableArray.Create(
            row.Source, Invariant($"{row.StandardUncertainty:0.####} {row.Unit}"), Invariant($"{row.Contribution:0.0000}"), row.Basis))];

    private static PaperForm Of(NearestForm nearest) => new(
        nearest.Form.Form,
        FactsOf(nearest),
        nearest.LogLikelihoodRatio is { } ratio && double.IsFinite(ratio) ? RatioSentence(ratio / Math.Log(10)) : null,
        [.. FormBesideReading.Of(nearest)],
        [.. nearest.Differences.Select(DifferenceWords.For)]);

    private static string FactsOf(NearestForm nearest)
    {
        var form = nearest.Form;
        var years = (form.From, form.To) switch
        {
            (null, null) => null,
            ({ } from, null) => Invariant($"from {from}"),
            (null, { } to) => Invariant($"until {to}"),
            ({ } from, { } to) => Invariant($"{from} to {to}"),
        };
        return string.Join(", ", new[] { form.Maker, Words.For(form.Status), years, form.Address, form.Source }.Where(part => !string.IsNullOrEmpty(part)));
    }

    /// <summary>The ratio is never above 1: no form explains the picture better than the freely chosen reading does.</summary>
    private static string RatioSentence(double log10) => Math.Abs(log10) < Math.Log10(2)
        ? "The picture is about as probable under this spelling as under the reading itself."
        : Invariant($"The picture is {Math.Pow(10, Math.Min(Math.Abs(log10), new JudgeOptions().MaximumLog10Ratio)):#,0.#}{(Math.Abs(log10) > new JudgeOptions().MaximumLog10Ratio ? " times or more" : " times")} less probable under this spelling than under the reading itself: {VerbalScale.For(Math.Min(Math.Abs(log10), new JudgeOptions().MaximumLog10Ratio))} for the reading.");

    private static string Others(Letter letter) => string.Join(", ", letter.Alternatives.Select(other => $"{(other.Character.Length == 0 ? "nothing" : other.Character)} {Percent(other.Probability)}"));

    private static PaperCut? Cut(LineReading line, Quad box)
    {
        IReadOnlyList<PixelPoint> corners = [.. Drawing.Corners(box)];
        return PaperCutter.Of(line.Line.Crop, corners.Min(corner => corner.X), corners.Min(corner => corner.Y), corners.Max(corner => corner.X), corners.Max(corner => corner.Y));
    }

    private static IEnumerable<PaperMark> TubeMarks(Tube? tube) => tube is null
        ? []
        : tube.Silhouettes.Prepend(tube.Axis).Select(segment => new PaperMark([segment.Start, segment.End], false));

    private static ImmutableArray<PixelPoint> Polygon(PixelEllipse ellipse)
    {
        var (sin, cos) = Math.SinCos(ellipse.Rotation.Radians);
        return [.. Enumerable.Range(0, Corners).Select(i =>
        {
            var (y, x) = Math.SinCos(2 * Math.PI * i / Corners);
            var (along, across) = (x * ellipse.SemiMajor.Pixels, y * ellipse.SemiMinor.Pixels);
            return new PixelPoint(ellipse.Centre.X + (along * cos) - (across * sin), ellipse.Centre.Y + (along * sin) + (across * cos));
        })];
    }
}
