using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Records;

/// <summary>Turns the domain's records into the records that are written as JSON; rounds, and changes nothing else.</summary>
internal static class RecordMaker
{
    /// <summary>Digits after the point of pixel coordinates: a hundredth of a pixel is finer than any stage can tell.</summary>
    private const int PixelDigits = 2;

    /// <summary>Digits after the point of what limits a photo.</summary>
    private const int MeasureDigits = 3;

    /// <summary>Digits after the point of probabilities.</summary>
    private const int ProbabilityDigits = 4;

    /// <summary>Digits after the point of how much a letter is foreshortened.</summary>
    private const int StretchDigits = 2;

    internal static PhotoRecord Of(Examination examination) => new(
        examination.Photo.File,
        examination.Photo.Sha256,
        examination.Tube is { } tube ? Of(tube, examination.Reading) : null,
        Of(examination.Reading, examination.Advice.Measures.Burnt, examination.Tube is null ? null : examination.Strip.Map),
        Of(examination.Finding) with { Evidence = EvidenceRecordMaker.Of(examination.Evidence) },
        examination.Warnings,
        Of(examination.Advice))
    {
        Ring = RingOf(examination.Ring, examination.Strip, examination.Reading),
        Sizes = examination.Sizes is { } sizes ? Of(sizes) : null,
    };

    /// <summary>Gives the ring whose face was laid flat; null where none was.</summary>
    internal static RingRecord? RingOf(RingFace? ring, Strip strip, Reading reading) => ring is not null && strip.Map is RingStripMap map
        ? new RingRecord(MeasureRecordMaker.Of(ring.Outer), MeasureRecordMaker.Of(ring.Inner), RingSense.Word(reading, map), ring.Marked)
        : null;

    private static TubeSizesRecord Of(TubeSizes sizes) => new(
        sizes.Scale.ToString().ToLowerInvariant(),
        Millimetres(sizes.Diameter.Value),
        Millimetres(sizes.Diameter.ExpandedUncertainty),
        [.. sizes.Lines.Select(line => new LineSizesRecord(
            line.Line,
            Millimetres(line.Tallest.Value),
            Millimetres(line.Tallest.ExpandedUncertainty),
            Millimetres(line.Median),
            line.FromEnd is { } end ? Millimetres(end.Value) : null,
            line.FromEnd is { } uncertain ? Millimetres(uncertain.ExpandedUncertainty) : null))],
        sizes.Notes);

    private static double Millimetres(Length length) => Math.Round(length.Millimetres, MeasureDigits);

    internal static SetRecord Of(SetExamination set) => new(
        Words.For(set.Kind),
        [.. set.Members.Select(member => member.Photo.File)],
        Of(set.Reading, []),
        Of(set.Finding) with { Evidence = EvidenceRecordMaker.Of(set.Evidence) });

    /// <summary>Gives the lines of a reading; letters that are burnt out say so, and with the map of the strip that a tube was laid flat to each says how much it is foreshortened.</summary>
    internal static ImmutableArray<LineRecord> Of(Reading reading, ImmutableArray<BurntPlace> burnt, StripMap? map = null) => [.. reading.Lines.Select((line, number) =>
        new LineRecord(line.Text, [.. line.Letters.Select((letter, place) => (letter, place)).Where(item => !item.letter.IsSpace).Select(item => Of(item.letter) with
        {
            BlownOut = burnt.FirstOrDefault(one => one.Part == BurntPart.Letter && one.Line == number && one.Letter == item.place) is { } blown ? Math.Round(blown.Share, MeasureDigits) : null,
            Stretch = StretchAt(item.letter.InPhoto.Centre, map),
        })]))];

    internal static FindingRecord Of(Finding finding) => new(
        Words.For(finding.Outcome),
        [.. finding.Nearest.Select(Of)],
        finding.Reasons);

    internal static AdviceRecord Of(PhotoAdvice advice) => new(
        advice.Worst is { } worst ? Words.For(worst) : null,
        [.. advice.Limits.Select(limit => new LimitRecord(Words.For(limit.Kind), limit.Sentence, limit.Measure, Math.Round(limit.Value, MeasureDigits), limit.Limit, limit.Unit, limit.Source, limit.Steps))])
    {
        Light = advice.Measures.Light is Outcome<LampSight>.Found { Value: var lamp }
            ? new LightRecord(lamp.Words, Math.Round(lamp.Side.Degrees), Math.Round(lamp.Uncertainty.Degrees), Math.Round(lamp.InPhoto.Degrees), lamp.Basis)
            : null,
        Outlines = advice.Measures.Outlines is Outcome<OutlineSharpness>.Found { Value: var outlines }
            ? new OutlinesRecord(Math.Round(outlines.Mtf50, MeasureDigits), Math.Round(outlines.Rise.Pixels, MeasureDigits), outlines.Places, OutlineSharpness.Source)
            : null,
    };

    internal static ImmutableArray<double> Of(PixelPoint point) =>
        [Math.Round(point.X, PixelDigits), Math.Round(point.Y, PixelDigits)];

    private static TubeRecord Of(Tube tube, Reading reading) => new(
        Of(tube.Axis),
        [.. tube.Silhouettes.Select(Of)],
        Math.Round(LetteredPart.DiameterOf(tube, reading).Pixels, PixelDigits));

    private static ImmutableArray<ImmutableArray<double>> Of(PixelSegment segment) => [Of(segment.Start), Of(segment.End)];

    private static LetterRecord Of(Letter letter) => new(
        letter.Character,
        Of(letter.Probability),
        [.. letter.Alternatives.Select(candidate => new CandidateRecord(candidate.Character, Of(candidate.Probability)))],
        [Of(letter.InPhoto.TopLeft), Of(letter.InPhoto.TopRight), Of(letter.InPhoto.BottomRight), Of(letter.InPhoto.BottomLeft)]);

    private static double? StretchAt(PixelPoint photoPoint, StripMap? map) =>
        map?.ToStrip(photoPoint) is { } inStrip ? Math.Round(map.Stretch(inStrip), StretchDigits) : null;

    private static NearestRecord Of(NearestForm nearest) => new(
        nearest.Form.Form,
        nearest.Form.Maker,
        Words.For(nearest.Form.Status),
        [.. nearest.Differences.Select(difference => new DifferenceRecord(difference.Attested, difference.Read, Of(difference.Probability)))]);

    private static double Of(Probability probability) => Math.Round(probability.Value, ProbabilityDigits);
}
