using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Rings;

/// <summary>
/// Finds the flat face of a ring: the rim as the measuring of cells finds it, and circles inside it that lie as circles of the rim's plane would.
/// The largest of them gives the plane's perspective, since what lies farther in may lie deeper; the smallest says how far in the face goes.
/// </summary>
public sealed class RingFinder
{
    private const string Stage = "ring";

    /// <summary>Points by which a circle of the plane is led to the photo; its image is an ellipse exactly.</summary>
    private const int ImagePoints = 24;

    /// <summary>How far an edge may lie from the ellipse first found, and its centre from the ellipse's, in pixels of the small copy it was found in.</summary>
    private const double Reach = 3.5;
    private const double Wave = 2;
    private const double SearchSide = 640;

    /// <summary>How far the centre of an inner circle may lie off the rim's, as a share of the rim's size: 35 degrees at four radii shift it by a seventh.</summary>
    private const double LargestOffset = 0.15;

    /// <summary>How far the ratios of the axes of two circles of one plane may differ.</summary>
    private const double LargestRatioStep = 0.08;

    /// <summary>Least share of an inner circle's outline along which its edge is seen.</summary>
    private const double SmallestSeenShare = 0.6;

    /// <summary>Share of its outline along which edges lie on a circle that shows all round.</summary>
    private const double WholeRim = 0.8;

    /// <summary>Centres and rims looked at: a ring to be read fills a good part of its photo, and is found among the first.</summary>
    private const int MostCentres = 3;
    private const int MostRims = 6;

    private readonly RingFinderOptions _options;

    /// <summary>Makes a finder.</summary>
    /// <param name="options">What counts as a ring; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public RingFinder(RingFinderOptions? options = null)
    {
        _options = options ?? new RingFinderOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SmallestRim, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SmallestOpening, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(_options.LargestOpening, 1, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(_options.SmallestOpening, _options.LargestOpening, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.ClosedFace, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(_options.ClosedFace, 1, nameof(options));
    }

    /// <summary>Finds the ring.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The face, or why there is none and what to do.</returns>
    public Outcome<RingFace> Run(Photo photo, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var candidates = CellFinder.Find(photo.Colour, [], cancel, MostCentres);
        var smallest = _options.SmallestRim * Math.Min(photo.Gray.Width, photo.Gray.Height);
        var rims = candidates.Where(candidate => candidate.Ellipse.SemiMajor >= smallest).Take(MostRims).ToList();
        if (OuterRim.Choose(photo, rims, _options.RimCoverage, cancel) is not { } rim)
        {
            return new Outcome<RingFace>.Declined(new Refusal(
                Stage,
                "No ring can be made out: no round rim of a flat face shows in the photo.",
                "Photograph the ring from straight in front so that its whole rim shows, or mark its rim by hand."));
        }

        var chosen = EllipseFit.Geometric(rim.Points.AsSpan());
        var outer = Round(photo, chosen, candidates) ?? chosen;
        var inside = Inside(photo, outer, candidates, cancel);
        return new Outcome<RingFace>.Found(inside.Count == 0 ? ClosedFace(outer) : OpenFace(outer, inside));
    }

    /// <summary>Gives the face that a person marked.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="outer">Image of the rim.</param>
    /// <param name="opening">The opening's radius as a share of the rim's; null where it was not said.</param>
    /// <exception cref="ArgumentOutOfRangeException">The opening is not between 0 and 1.</exception>
    public Outcome<RingFace> Run(Photo photo, PixelEllipse outer, double? opening)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var share = opening ?? _options.ClosedFace;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(share, nameof(opening));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(share, 1, nameof(opening));
        var inner = Shrunk(outer, share);
        var plane = new RingPlane(outer, inner);
        var inside = Enumerable.Range(0, ImagePoints).Select(i => plane.ToPhoto(1, Angle.FromRadians(i * Math.Tau / ImagePoints)))
            .Count(point => point.X >= 0 && point.Y >= 0 && point.X < photo.Gray.Width && point.Y < photo.Gray.Height);
        return 2 * inside < ImagePoints
            ? new Outcome<RingFace>.Declined(new Refusal(
                Stage,
                $"Most of the rim marked lies outside the photo, which is {photo.Gray.Width} x {photo.Gray.Height} pixels.",
                "Mark the rim in pixels of the upright photo."))
            : new Outcome<RingFace>.Found(new RingFace(outer, inner, Marked: true, ["The rim of the ring was marked by hand, and is taken as seen from far away."]));
    }

    private RingFace ClosedFace(FittedEllipse outer)
    {
        var rim = Of(outer);
        return new RingFace(rim, Shrunk(rim, _options.ClosedFace), Marked: false, ["No opening was found inside the rim of the ring: the outer part of the face was laid flat, as seen from far away."]);
    }

    private RingFace OpenFace(FittedEllipse outer, List<FittedEllipse> inside)
    {
        var rim = Of(outer);
        var plane = new RingPlane(rim, Of(inside.MaxBy(ellipse => ellipse.SemiMajor)!));
        var deepest = inside.MinBy(ellipse => ellipse.SemiMajor)!;
        var radius = Math.Max(_options.SmallestOpening, plane.InnerRadius * deepest.SemiMajor / inside.Max(ellipse => ellipse.SemiMajor));
        var points = Enumerable.Range(0, ImagePoints).Select(i => plane.ToPhoto(radius, Angle.FromRadians(i * Math.Tau / ImagePoints))).ToArray();
        return new RingFace(rim, Of(EllipseFit.Geometric(points)), Marked: false, []);
    }

    /// <summary>Gives the rim where an opening was taken for it, whose edge is often the sharper one: the largest circle round it that shows nearly all round.</summary>
    private FittedEllipse? Round(Photo photo, FittedEllipse chosen, List<EllipseCandidate> candidates)
    {
        var tracer = new CircleTracer(LightPicture.From(photo.Gray));
        return candidates.Where(rim => rim.Coverage >= WholeRim && MayLieInside(rim.Ellipse, chosen))
            .OrderByDescending(rim => rim.Ellipse.SemiMajor)
            .Select(rim => Traced(photo, tracer, rim)?.Ellipse)
            .FirstOrDefault(ellipse => ellipse is not null && MayLieInside(ellipse, chosen));
    }

    private static (FittedEllipse Ellipse, double Quality)? Traced(Photo photo, CircleTracer tracer, EllipseCandidate candidate)
    {
        var size = Math.Max(1, Math.Max(photo.Gray.Width, photo.Gray.Height) / SearchSide);
        var curve = ClosedCurve.Of(candidate.Ellipse, ClosedCurve.PointsFor(candidate.Ellipse.SemiMajor));
        return tracer.Trace(curve, Reach * size, 1, Wave * size) is { } trace && trace.SeenShare >= SmallestSeenShare
            ? (EllipseFit.Geometric(trace.Points.AsSpan()), trace.Quality)
            : null;
    }

    private List<FittedEllipse> Inside(Photo photo, FittedEllipse outer, List<EllipseCandidate> candidates, CancellationToken cancel)
    {
        var tracer = new CircleTracer(LightPicture.From(photo.Gray));
        var traced = new List<(FittedEllipse Ellipse, double Quality)>();
        foreach (var candidate in candidates.Where(candidate => MayLieInside(outer, candidate.Ellipse)))
        {
            cancel.ThrowIfCancellationRequested();
            if (Traced(photo, tracer, candidate) is { } circle && MayLieInside(outer, circle.Ellipse))
            {
                traced.Add(circle);
            }
        }

        var best = traced.Count == 0 ? 0 : traced.Max(circle => circle.Quality);
        return [.. traced.Where(circle => circle.Quality >= _options.OpeningQuality * best).Select(circle => circle.Ellipse)];
    }

    /// <summary>Says whether an ellipse may be the image of a circle about the same axis, as large as an opening.</summary>
    private bool MayLieInside(FittedEllipse outer, FittedEllipse inner)
    {
        var share = inner.SemiMajor / outer.SemiMajor;
        var (x, y) = (inner.CentreX - outer.CentreX, inner.CentreY - outer.CentreY);
        var offset = Math.Sqrt((x * x) + (y * y)) / outer.SemiMajor;
        return share >= _options.SmallestOpening
            && share <= _options.LargestOpening
            && offset <= LargestOffset
            && offset + share < 1
            && Math.Abs((inner.SemiMinor / inner.SemiMajor) - (outer.SemiMinor / outer.SemiMajor)) <= LargestRatioStep;
    }

    private static PixelEllipse Of(FittedEllipse ellipse) => new(
        new PixelPoint(ellipse.CentreX, ellipse.CentreY),
        PixelLength.FromPixels(ellipse.SemiMajor),
        PixelLength.FromPixels(ellipse.SemiMinor),
        Angle.FromRadians(ellipse.Rotation));

    private static PixelEllipse Shrunk(PixelEllipse ellipse, double share) => ellipse with { SemiMajor = ellipse.SemiMajor * share, SemiMinor = ellipse.SemiMinor * share };
}
