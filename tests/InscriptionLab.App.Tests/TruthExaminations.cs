using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.References;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.App.Tests;

/// <summary>Examinations whose tube and letters come from truth files and not from the finder and the reader: what is written from them must hold whatever those do.</summary>
internal static class TruthExaminations
{
    private const double HalfPixel = 0.5;

    /// <summary>Probability given to every letter; its other candidate gets the rest.</summary>
    internal const double Sure = 0.9;

    /// <summary>Gives an examiner whose finder and reader are the truth of one sample.</summary>
    internal static Examiner Examiner(string sample) => new(Stages(sample), TimeProvider.System);

    /// <summary>Gives the stages with the truth of one sample in place of finder and reader.</summary>
    internal static ExaminingStages Stages(string sample)
    {
        var truth = SampleImages.TruthOf(sample);
        var unroller = new Unroller();
        return new ExaminingStages(
            Open: file => new PhotoReader(new PhotoLimits()).Read(file),
            FindTubes: (photo, _) => TubeOf(truth, photo) is { } tube ? new Outcome<ImmutableArray<Tube>>.Found([tube]) : new Outcome<ImmutableArray<Tube>>.Declined(new Refusal("tube", "There is none.", "Take another photo.")),
            Unroll: (photo, tube, _) => unroller.Run(photo, tube),
            LayFlat: (photo, _) => unroller.Flat(photo),
            Read: (_, strip, _) => new Reading("truth", [.. truth.Lines.Select((_, i) => ReadingOf(truth, i, LineOf(truth, i, strip), strip))], [new StyleCandidate(truth.Style ?? "roman", Probability.From(Sure))]),
            Compare: reading => new ReadingComparison(reading, new ReferenceList("none", string.Empty, []), []),
            Judge: comparison => Judged(truth, comparison.Reading),
            Advise: (photo, tube, reading, cancel) => new Adviser().Advise(new LetteringMeter().Measure(photo, tube, reading, cancel)));
    }

    internal static Examination Of(string sample) => Examiner(sample).Examine(SampleImages.PathOf(sample), CancellationToken.None);

    private static PixelPoint Point(ImmutableArray<double> point) => new(point[0] - HalfPixel, point[1] - HalfPixel);

    private static Quad Quad(TruthLetter letter) => new(Point(letter.Quad[0]), Point(letter.Quad[1]), Point(letter.Quad[2]), Point(letter.Quad[3]));

    private static Tube? TubeOf(TruthPhoto truth, Photo photo)
    {
        if (truth.Silhouettes.Length == 0)
        {
            return null;
        }

        PixelSegment Segment(ImmutableArray<ImmutableArray<double>> points) => new(Point(points[0]), Point(points[1]));
        var (first, second) = (Segment(truth.Silhouettes[0]), Segment(truth.Silhouettes[1]));
        var centre = new PixelPoint((photo.Gray.Width - 1) / 2.0, (photo.Gray.Height - 1) / 2.0);
        var pose = CylinderPose.FromSilhouettes(first, second, PixelLength.FromPixels(truth.Camera!.Focal), focalAssumed: false, centre)!;
        return new Tube(Segment(truth.Axis), [first, second], PixelLength.FromPixels(truth.TubeDiameter!.Value), pose, Probability.One, ["The outlines come from the truth."]);
    }

    private static LetteringLine LineOf(TruthPhoto truth, int line, Strip strip)
    {
        var boxes = truth.Letters.Where(letter => letter.Line == line).Select(letter => OnStrip(Quad(letter), strip)).ToList();
        var corners = boxes.SelectMany(box => new[] { box.TopLeft, box.TopRight, box.BottomRight, box.BottomLeft }).ToList();
        var (left, top) = ((int)corners.Min(point => point.X), (int)corners.Min(point => point.Y));
        var (width, height) = ((int)corners.Max(point => point.X) - left + 1, (int)corners.Max(point => point.Y) - top + 1);
        var pixels = new byte[width * height];
        for (var i = 0; i < pixels.Length; i++)
        {
            var (x, y) = (Math.Clamp(left + (i % width), 0, strip.Image.Width - 1), Math.Clamp(top + (i / width), 0, strip.Image.Height - 1));
            pixels[i] = strip.Image[x, y];
        }

        var inStrip = new Quad(new(left, top), new(left + width, top), new(left + width, top + height), new(left, top + height));
        return new LetteringLine(
            new GrayImage(width, height, pixels),
            new ShiftedMap(left, top, strip.Map),
            inStrip,
            new Quad(strip.Map.ToPhoto(inStrip.TopLeft), strip.Map.ToPhoto(inStrip.TopRight), strip.Map.ToPhoto(inStrip.BottomRight), strip.Map.ToPhoto(inStrip.BottomLeft)),
            new LineDirection(default, UpsideDown: false, Mirrored: false),
            PixelLength.FromPixels(height),
            Probability.One);
    }

    private static LineReading ReadingOf(TruthPhoto truth, int line, LetteringLine found, Strip strip)
    {
        var cut = truth.Letters.Where(letter => letter.Line == line).ToDictionary(letter => letter.Index);
        var origin = found.InStrip.TopLeft;
        var letters = truth.Lines[line].Select((character, i) =>
        {
            if (!cut.TryGetValue(i, out var letter))
            {
                return new Letter(" ", Probability.One, [], default, default);
            }

            var box = OnStrip(Quad(letter), strip);
            PixelPoint InCrop(PixelPoint point) => new(point.X - origin.X, point.Y - origin.Y);
            return new Letter(
                letter.Char,
                Probability.From(Sure),
                [new LetterCandidate("e", Probability.From(0.07)), new LetterCandidate(string.Empty, Probability.From(0.03))],
                Quad(letter),
                new Quad(InCrop(box.TopLeft), InCrop(box.TopRight), InCrop(box.BottomRight), InCrop(box.BottomLeft)));
        });
        return new LineReading(found, [.. letters], Probability.From(Sure), null);
    }

    private static Quad OnStrip(Quad quad, Strip strip) => new(
        strip.Map.ToStrip(quad.TopLeft) ?? default,
        strip.Map.ToStrip(quad.TopRight) ?? default,
        strip.Map.ToStrip(quad.BottomRight) ?? default,
        strip.Map.ToStrip(quad.BottomLeft) ?? default);

    private static Finding Judged(TruthPhoto truth, Reading reading)
    {
        if (reading.Lines.Length == 0)
        {
            return new Finding(FindingOutcome.NothingRead, [], ["No lettering was read."], [], []);
        }

        var read = truth.Lines[0];
        var form = truth.IsVariantOf ?? truth.Lines[0];
        var differences = form.Length == read.Length
            ? Enumerable.Range(0, read.Length).Where(i => read[i] != form[i]).Select(i => new LetterDifference(form[i..(i + 1)], read[i..(i + 1)], Probability.From(Sure), 0, i) { FormIndex = i })
            : [];
        var nearest = new NearestForm(new ReferenceForm(form, form, AttestationStatus.Attested), 0, 1, [.. differences], null);
        return new Finding(
            FindingOutcome.Differs,
            [nearest],
            ["The form <b>nearest</b> to the reading differs in the letters shown."],
            ["Whether the engraver or a later hand cut it."],
            ["Move the lamp low to one side and take a second photo."]);
    }

    private sealed record ShiftedMap(double Left, double Top, StripMap Strip) : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point) => Strip.ToPhoto(new PixelPoint(point.X + Left, point.Y + Top));
    }
}
