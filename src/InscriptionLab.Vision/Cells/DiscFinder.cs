using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Finds a coin or another round disc of known diameter beside the cell: of the round things in the photo the one that the user marks, or the one whose middle is most like its border, since a cell is open there.</summary>
internal static class DiscFinder
{
    /// <summary>Centres looked at.</summary>
    private const int MostCentres = 10;

    /// <summary>Least share of a disc's outline along which edges are found, then traced.</summary>
    private const double SmallestCoverage = 0.55;
    private const double SmallestSeenShare = 0.75;

    /// <summary>Sizes tried beside the one found: a coin's border is raised, and its inner edge is found as readily as its outer one.</summary>
    private static readonly double[] Sizes = [1, 1.03, 1.06, 1.09, 0.97];

    /// <summary>Least quality of the outermost edge's trace, and of the share of it that is seen, beside the best one's: a line that jumps from one edge to the next is worse in both.</summary>
    private const double SmallestQualityShare = 0.7;
    private const double SmallestSeenBeside = 0.85;

    /// <summary>A disc's middle must be so many times more like its border than that of the other round thing.</summary>
    private const double Decisive = 1.6;

    /// <summary>Radii, as shares of the outline's, of the middle and of the border that are compared.</summary>
    private const double Middle = 0.25;
    private const double Border = 0.9;
    private const int Places = 32;

    /// <summary>Share by which the outline is widened when it is left out of the search for the cell.</summary>
    private const double Widening = 1.08;

    /// <summary>Finds the disc.</summary>
    /// <returns>The disc, or null where none is seen or it cannot be told from the cell.</returns>
    internal static ScaleSighting? Find(Photo photo, ScaleRequest request, CancellationToken cancel)
    {
        if (request.Size is not { } size)
        {
            return null;
        }

        var picture = LightPicture.From(photo.Gray);
        var round = Outlines(photo, picture, cancel);
        var chosen = request.Marks.IsEmpty ? Plainest(picture, round) : Holding(request.Marks[0], round);
        if (chosen is null)
        {
            return null;
        }

        var (ellipse, trace) = chosen.Value;
        var wide = ellipse with { SemiMajor = Widening * ellipse.SemiMajor, SemiMinor = Widening * ellipse.SemiMinor };
        return new ScaleSighting(ScaleKind.Disc, size, false, [], [], [], [.. ClosedCurve.Of(wide, Places).Select(p => p.At)]) { Round = trace.Points };
    }

    /// <summary>Gives the outermost well-traced outline of each round thing, the largest first.</summary>
    private static List<(FittedEllipse Ellipse, TracedCircle Trace)> Outlines(Photo photo, LightPicture picture, CancellationToken cancel)
    {
        var outlines = new List<(FittedEllipse Ellipse, TracedCircle Trace)>();
        foreach (var candidate in CellFinder.Find(photo.Colour, [], cancel, MostCentres).Where(c => c.Coverage >= SmallestCoverage).OrderByDescending(c => c.Ellipse.SemiMajor))
        {
            cancel.ThrowIfCancellationRequested();
            if (!outlines.Any(o => Apart(o.Ellipse, candidate.Ellipse) < o.Ellipse.SemiMajor)
                && Outermost(photo, picture, candidate) is { } outline)
            {
                outlines.Add(outline);
            }
        }

        return outlines;
    }

    private static (FittedEllipse Ellipse, TracedCircle Trace)? Outermost(Photo photo, LightPicture picture, EllipseCandidate candidate)
    {
        var traced = new List<(FittedEllipse Ellipse, TracedCircle Trace)>();
        foreach (var size in Sizes)
        {
            var ellipse = candidate.Ellipse with { SemiMajor = size * candidate.Ellipse.SemiMajor, SemiMinor = size * candidate.Ellipse.SemiMinor };
            if (OuterRim.Trace(photo, picture, candidate with { Ellipse = ellipse }) is { } trace && trace.SeenShare >= SmallestSeenShare)
            {
                traced.Add((ellipse, trace));
            }
        }

        var best = traced.Select(t => t.Trace.Quality).DefaultIfEmpty(0).Max();
        return traced
            .Where(t => t.Trace.Quality >= SmallestQualityShare * best && t.Trace.SeenShare >= SmallestSeenBeside * traced.Max(u => u.Trace.SeenShare))
            .OrderByDescending(t => Radius(t.Trace))
            .Cast<(FittedEllipse Ellipse, TracedCircle Trace)?>()
            .FirstOrDefault();
    }

    private static double Radius(TracedCircle trace)
    {
        var middle = new PixelPoint(trace.Points.Average(p => p.X), trace.Points.Average(p => p.Y));
        return trace.Points.Average(p => p.DistanceTo(middle).Pixels);
    }

    private static (FittedEllipse Ellipse, TracedCircle Trace)? Holding(PixelPoint mark, List<(FittedEllipse Ellipse, TracedCircle Trace)> outlines) => outlines
        .Where(o => mark.DistanceTo(new PixelPoint(o.Ellipse.CentreX, o.Ellipse.CentreY)).Pixels < o.Ellipse.SemiMajor)
        .Cast<(FittedEllipse Ellipse, TracedCircle Trace)?>()
        .FirstOrDefault();

    private static (FittedEllipse Ellipse, TracedCircle Trace)? Plainest(LightPicture picture, List<(FittedEllipse Ellipse, TracedCircle Trace)> outlines)
    {
        if (outlines.Count < 2)
        {
            return null;
        }

        // Only the two largest: what is smaller than cell and disc is neither.
        var pair = outlines.Take(2).Select(o => (Outline: o, Unlike: Unlike(picture, o.Ellipse))).OrderBy(o => o.Unlike).ToArray();
        return pair[1].Unlike >= Decisive * pair[0].Unlike ? pair[0].Outline : null;
    }

    /// <summary>Gives how unlike the light of an outline's middle is to that of its border, as a difference of logarithms.</summary>
    private static double Unlike(LightPicture picture, FittedEllipse ellipse)
    {
        const double Dark = 0.002;
        double Light(double share)
        {
            double[] seen = [.. ClosedCurve
                .Of(ellipse with { SemiMajor = share * ellipse.SemiMajor, SemiMinor = share * ellipse.SemiMinor }, Places)
                .Where(p => picture.Holds(p.At.X, p.At.Y, 1))
                .Select(p => picture.At(p.At.X, p.At.Y))
                .Order()];
            return seen.Length == 0 ? 0 : seen[seen.Length / 2];
        }

        return Math.Abs(Math.Log((Light(Middle) + Dark) / (Light(Border) + Dark)));
    }

    private static double Apart(FittedEllipse one, FittedEllipse other) =>
        new PixelPoint(one.CentreX, one.CentreY).DistanceTo(new PixelPoint(other.CentreX, other.CentreY)).Pixels;
}
