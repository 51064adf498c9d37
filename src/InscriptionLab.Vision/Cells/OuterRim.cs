using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Chooses the outer rim among ellipses: the largest whose edge can be traced nearly as well as the best one's.</summary>
internal static class OuterRim
{
    /// <summary>Candidates traced, the best covered first.</summary>
    private const int MostCandidates = 14;

    /// <summary>Least quality of the rim's trace, as a share of the best one's: a chance alignment of texture reaches a quarter.</summary>
    private const double SmallestQualityShare = 0.35;

    /// <summary>An ellipse whose outline is all edges is no chance alignment (those cover up to about 0.7): a rim hardly brighter than the table is traced with more scatter.</summary>
    private const double WholeCoverage = 0.9;
    private const double SmallestWholeQualityShare = 0.2;

    /// <summary>A rim traced worse than this share of the best circle is looked for again nearby, one of its sides pushed in by these shares of its width.</summary>
    private const double PoorQualityShare = 0.5;
    private const int Directions = 16;
    private const int PushedPoints = 48;
    private static readonly double[] Pushes = [0.02, 0.035, 0.05, 0.065, 0.08];

    /// <summary>Least share of the rim's outline along which its edge is seen.</summary>
    private const double SmallestSeenShare = 0.5;

    /// <summary>Ellipses nearly as large as the largest, as a share of its size, may be the rim with a shadow or the foot of the cell partly taken along: the best traced of them is the rim.</summary>
    private const double NearShare = 0.94;

    /// <summary>Share of an outline that must be seen in lightness for colour not to be asked.</summary>
    private const double WellSeenShare = 0.6;

    /// <summary>How far the edge may lie from the ellipse first found, and its centre from the ellipse's, in pixels of the small copy it was found in.</summary>
    private const double Reach = 3.5;
    private const double Wave = 2;
    private const double SearchSide = 640;

    /// <summary>Chooses and traces the rim.</summary>
    /// <returns>The trace, or null where no ellipse can be traced well enough.</returns>
    internal static TracedCircle? Choose(Photo photo, List<EllipseCandidate> candidates, double smallestCoverage, CancellationToken cancel)
    {
        var gray = LightPicture.From(photo.Gray);
        var traced = new List<(double Size, double Coverage, TracedCircle Trace)>();
        foreach (var candidate in candidates.Where(c => c.Coverage >= smallestCoverage).Take(MostCandidates))
        {
            cancel.ThrowIfCancellationRequested();
            if (Trace(photo, gray, candidate) is { } trace)
            {
                traced.Add((candidate.Ellipse.SemiMajor, candidate.Coverage, trace));
            }
        }

        var best = traced.Count == 0 ? 0 : traced.Max(t => t.Trace.Quality);
        var fit = traced.Where(t => t.Trace.SeenShare >= SmallestSeenShare && t.Trace.Quality >= best * (t.Coverage >= WholeCoverage ? SmallestWholeQualityShare : SmallestQualityShare)).ToArray();
        if (fit.Length == 0)
        {
            return null;
        }

        var chosen = fit.Where(t => t.Size >= NearShare * fit.Max(f => f.Size)).MaxBy(t => t.Trace.Quality);
        return chosen.Trace.Quality >= PoorQualityShare * best ? chosen.Trace : Better(photo, gray, candidates.First(c => c.Ellipse.SemiMajor == chosen.Size), chosen.Trace, cancel);
    }

    /// <summary>Looks again near an ellipse that runs partly along the rim and partly along the foot of the cell: with one side pushed in it lies along the rim alone.</summary>
    private static TracedCircle Better(Photo photo, LightPicture gray, EllipseCandidate candidate, TracedCircle trace, CancellationToken cancel)
    {
        var best = trace;
        foreach (var push in Pushes)
        {
            cancel.ThrowIfCancellationRequested();
            for (var i = 0; i < Directions; i++)
            {
                if (Pushed(candidate.Ellipse, i * Math.Tau / Directions, push) is { } ellipse
                    && Trace(photo, gray, candidate with { Ellipse = ellipse }) is { } other && other.SeenShare >= trace.SeenShare && other.Quality > best.Quality)
                {
                    best = other;
                }
            }
        }

        return best;
    }

    /// <summary>Pushes one side of an ellipse in: it shrinks along a direction, and its far side stays.</summary>
    private static FittedEllipse? Pushed(FittedEllipse ellipse, double direction, double share)
    {
        var (sin, cos) = Math.SinCos(direction);
        var points = ClosedCurve.Of(ellipse, PushedPoints).Select(p => p.At).ToArray();
        var far = points.Min(p => (p.X * cos) + (p.Y * sin));
        return EllipseFit.Direct([.. points.Select(p =>
        {
            var off = share * ((p.X * cos) + (p.Y * sin) - far);
            return new PixelPoint(p.X - (off * cos), p.Y - (off * sin));
        })]);
    }

    /// <summary>Traces the edge of a candidate in lightness, or in colour where that shows it better.</summary>
    internal static TracedCircle? Trace(Photo photo, LightPicture gray, EllipseCandidate candidate)
    {
        var size = Math.Max(1, Math.Max(photo.Gray.Width, photo.Gray.Height) / SearchSide);
        var curve = ClosedCurve.Of(candidate.Ellipse, ClosedCurve.PointsFor(candidate.Ellipse.SemiMajor));

        // Lightness carries the sharpest edge; only where both sides are alike in it is colour better, which files keep coarser.
        var light = new CircleTracer(gray).Trace(curve, Reach * size, 1, Wave * size);
        if (light is not null && light.SeenShare >= WellSeenShare)
        {
            return light;
        }

        var colour = new CircleTracer(ContrastPicture.Of(photo.Colour, candidate.Ellipse)).Trace(curve, Reach * size, 1, Wave * size);
        return light is null || (colour is not null && colour.Quality > light.Quality) ? colour : light;
    }
}
