using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Assess.Turns;

/// <summary>Joins every set of turned photos of a folder, in an order that says nothing, and holds the turns found, the seams and the joint reading against the truth.</summary>
internal sealed class TurnAssessor(Composition composition, string folder, TextWriter progress)
{
    /// <summary>Letters turned farther away than this (cosine of 60 degrees) are no place to judge a seam at: the strip takes them from another photo.</summary>
    private const double LeastFacing = 0.5;

    internal IEnumerable<TurnCase> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var list = DemoReferences.Load();
        foreach (var set in truths.Where(truth => truth is { Kind: "turn", Set: not null }).GroupBy(truth => truth.Set!, StringComparer.Ordinal))
        {
            // By their checksums, not by their turns: the program must not need to be told the order.
            var photos = set.Select(truth => (Truth: truth, Member: Examine(truth, list, cancel))).OrderBy(pair => pair.Member.Photo.Sha256, StringComparer.Ordinal).ToList();
            foreach (var joint in composition.SetExaminer(list).Examine([.. photos.Select(photo => photo.Member)], SetKind.Turns, cancel))
            {
                yield return Judge(set.Key, [.. joint.Members.Select(member => photos.First(photo => ReferenceEquals(photo.Member, member)).Truth)], joint);
            }
        }
    }

    private Examination Examine(TruthPhoto truth, References.ReferenceList list, CancellationToken cancel)
    {
        progress.WriteLine(truth.File);
        return composition.Examiner(list).Examine(Path.Combine(folder, truth.File), cancel);
    }

    private static TurnCase Judge(string set, ImmutableArray<TruthPhoto> truths, SetExamination joint)
    {
        var text = TextScorer.Score(truths[0], joint.Reading.Lines.Select(line => line.Text), hideHidden: false);
        if (joint.Mosaic is not { } mosaic)
        {
            return new TurnCase(set, truths.Length, 0, double.NaN, double.NaN, double.NaN, 0, double.NaN, text);
        }

        var round = 2 * Math.PI * mosaic.PixelsPerRadius;
        var apart = Meetings(truths, mosaic, round).ToList();
        return new TurnCase(
            set,
            truths.Length,
            mosaic.Views.Length,
            mosaic.ShareSeen,
            LargestStep(truths, mosaic),
            apart.Count == 0 ? double.NaN : Math.Sqrt(apart.Average(distance => distance * distance)) / round,
            apart.Count,
            mosaic.SeamError.Pixels / round,
            text);
    }

    /// <summary>The sense in which the truth counts turns is not the program's: the better of the two is taken, for the whole set.</summary>
    private static double LargestStep(ImmutableArray<TruthPhoto> truths, TurnMosaic mosaic)
    {
        var views = mosaic.Views.OrderBy(view => truths[view.PhotoIndex].Turn).ToList();
        double Largest(int sense) => views.Zip(views.Skip(1), (one, next) =>
            Math.Abs(Math.IEEERemainder(
                (next.Turn.Radians - one.Turn.Radians) - (sense * ((truths[next.PhotoIndex].Turn ?? double.NaN) - (truths[one.PhotoIndex].Turn ?? double.NaN)) * Math.PI / 180),
                2 * Math.PI))).Max() / (2 * Math.PI);
        return Math.Min(Largest(1), Largest(-1));
    }

    /// <summary>Distances, in strip pixels, between the places at which two photos put the middle of one true letter.</summary>
    private static IEnumerable<double> Meetings(ImmutableArray<TruthPhoto> truths, TurnMosaic mosaic, double round)
    {
        var places = from view in mosaic.Views
                     from letter in truths[view.PhotoIndex].Letters
                     where !letter.Hidden && letter.Quad.Length == 4 && letter.Facing >= LeastFacing
                     let middle = new PixelPoint(letter.Quad.Average(corner => corner[0]) - BoxScorer.TruthShift, letter.Quad.Average(corner => corner[1]) - BoxScorer.TruthShift)
                     let place = view.Map.ToStrip(middle)
                     where place is not null
                     select (letter.Line, letter.Index, Place: place.Value);
        foreach (var letter in places.GroupBy(place => (place.Line, place.Index)))
        {
            var seen = letter.Select(item => item.Place).ToList();
            for (var i = 0; i < seen.Count; i++)
            {
                for (var k = i + 1; k < seen.Count; k++)
                {
                    yield return Math.Sqrt(Math.Pow(seen[i].X - seen[k].X, 2) + Math.Pow(Math.IEEERemainder(seen[i].Y - seen[k].Y, round), 2));
                }
            }
        }
    }
}
