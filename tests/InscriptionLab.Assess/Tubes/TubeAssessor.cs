using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.Assess.Tubes;

/// <summary>Finds the tubes in every photo of a folder without reading the lettering, and holds outlines, axis and unrolled places against the truth. The truth's letters say which tube is meant.</summary>
internal sealed class TubeAssessor(Composition composition, string folder, string? pictures)
{
    private const int PictureSide = 1100;

    /// <summary>Gives the cases, photo after photo.</summary>
    internal IEnumerable<TubeCase> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var stages = composition.Stages(DemoReferences.Load());
        foreach (var truth in truths.Where(truth => truth.Kind != "cell"))
        {
            var photo = stages.Open(Path.Combine(folder, truth.File));
            var start = Stopwatch.GetTimestamp();
            var outcome = stages.FindTubes(photo, cancel);
            var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            IReadOnlyList<Tube> tubes = outcome is Outcome<System.Collections.Immutable.ImmutableArray<Tube>>.Found found ? found.Value : [];
            var chosen = Chosen(truth, tubes);
            Paint(photo, truth, tubes);
            yield return Judge(truth, tubes, chosen, seconds);
        }
    }

    private static TubeCase Judge(TruthPhoto truth, IReadOnlyList<Tube> tubes, int chosen, double seconds)
    {
        if (chosen < 0 || truth.TubeDiameter is not { } diameter || truth.AxisAngle is not { } angle)
        {
            return new TubeCase(truth.File, truth.TubeDiameter is not null, tubes.Count, chosen + 1, double.NaN, double.NaN, double.NaN, double.NaN, false, double.NaN, seconds);
        }

        var tube = tubes[chosen];
        var turn = Math.Abs(Math.IEEERemainder(tube.Axis.Direction.Degrees - angle, 180));
        return new TubeCase(
            truth.File, true, tubes.Count, chosen + 1, (tube.DiameterAt(Middle(truth)).Pixels / diameter) - 1, turn,
            ArcErrors.Of(truth, tube), ArcErrors.OfOutlines(truth, tube), !tube.Pose.FocalAssumed, tube.Confidence.Value, seconds);
    }

    /// <summary>The tube that shows most of the true letters, the likeliest first; without letters the one that shows the middle of the true axis.</summary>
    private static int Chosen(TruthPhoto truth, IReadOnlyList<Tube> tubes)
    {
        if (truth.TubeDiameter is null)
        {
            return -1;
        }

        var centres = Centres(truth);
        List<PixelPoint> places = centres.Count > 0 ? centres : [Middle(truth)];
        var (best, most) = (-1, 0);
        for (var i = 0; i < tubes.Count; i++)
        {
            var shown = (places.Count * places.Count(tubes[i].Carries)) + places.Count(tubes[i].Shows);
            if (shown > most)
            {
                (best, most) = (i, shown);
            }
        }

        return best;
    }

    private static PixelPoint Middle(TruthPhoto truth)
    {
        var centres = Centres(truth);
        return centres.Count > 0
            ? new PixelPoint(centres.Average(point => point.X), centres.Average(point => point.Y))
            : new PixelPoint(((truth.Axis[0][0] + truth.Axis[1][0]) / 2) - BoxScorer.TruthShift, ((truth.Axis[0][1] + truth.Axis[1][1]) / 2) - BoxScorer.TruthShift);
    }

    private static List<PixelPoint> Centres(TruthPhoto truth) => truth.Letters.IsDefaultOrEmpty
        ? []
        : [.. truth.Letters.Where(letter => letter.Quad.Length == 4).Select(letter => new PixelPoint(
            letter.Quad.Average(corner => corner[0]) - BoxScorer.TruthShift, letter.Quad.Average(corner => corner[1]) - BoxScorer.TruthShift))];

    private void Paint(Photo photo, TruthPhoto truth, IReadOnlyList<Tube> tubes)
    {
        if (pictures is null)
        {
            return;
        }

        PixelPoint At(System.Collections.Immutable.ImmutableArray<double> pair) => new(pair[0] - BoxScorer.TruthShift, pair[1] - BoxScorer.TruthShift);
        var marks = (truth.Silhouettes.IsDefault ? [] : truth.Silhouettes).Select(line => new Mark([At(line[0]), At(line[1])], false, MarkInk.Letter))
            .Concat(tubes.SelectMany((tube, place) => tube.Silhouettes.Select(line => new Mark([line.Start, line.End], false, place == 0 ? MarkInk.Outline : MarkInk.Axis))));
        Directory.CreateDirectory(pictures);
        File.WriteAllBytes(Path.Combine(pictures, Path.ChangeExtension(truth.File, ".jpg")), PictureEncoder.ToJpeg(PicturePainter.Paint(photo.Colour, marks), PictureSide));
    }
}
