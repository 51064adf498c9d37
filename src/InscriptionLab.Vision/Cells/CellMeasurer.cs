using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Measures the concentric circles of a lens cell beside a scale: outer rim, clear aperture and stop in millimetres, each with its uncertainty.</summary>
public sealed class CellMeasurer
{
    private const string Stage = "cell";

    /// <summary>Points traced round a circle for each pixel of its radius, within bounds: neighbours about two pixels apart.</summary>
    private const double PointsPerRadiusPixel = 3;
    private const int FewestPoints = 90;
    private const int MostPoints = 900;

    /// <summary>How far the outer edge may lie from the ellipse first found, in pixels of the small copy it was found in.</summary>
    private const double OuterReach = 3.5;
    private const double SearchSide = 640;

    /// <summary>How far an inner edge may lie from the circle first found, in pixels.</summary>
    private const double InnerReach = 5;
    private const double OuterWave = 2;
    private const double InnerWave = 3;

    /// <summary>Least share of an inner circle's outline along which its edge must be seen.</summary>
    private const double SmallestSeenShare = 0.2;
    private readonly CellMeasurerOptions _options;

    /// <summary>Makes a measurer.</summary>
    /// <param name="options">What is taken for known; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public CellMeasurer(CellMeasurerOptions? options = null)
    {
        _options = options ?? new CellMeasurerOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.AssumedFocal, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.AssumedFocalRelative, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.KnownFocalRelative, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.UnknownOffsetMillimetres, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.KnownOffsetMillimetres, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.ConcentricityMillimetres, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.ClearDepthMillimetres, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.StopDepthUncertaintyMillimetres, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.RoundnessPixels, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.DistortionRelative, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.EdgeShiftPixels, nameof(options));
        ArgumentOutOfRangeException.ThrowIfLessThan(_options.ScaleInflation, 1, nameof(options));
    }

    /// <summary>Measures the cell.</summary>
    /// <param name="photo">Photo of one cell, its axis roughly towards the camera, beside a scale.</param>
    /// <param name="request">What the user says of scale and height.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The measurement, or why this photo gives none and what to do.</returns>
    public Outcome<CellMeasurement> Run(Photo photo, MeasureRequest request, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(request);
        var scale = ScaleFinder.Find(photo.Gray, request.Scale, cancel);
        var candidates = CellFinder.Find(photo.Colour, scale?.Outline ?? [], cancel);
        var outer = Outer(candidates);
        if (CellRefusals.Of(Stage, scale, outer is not null, request) is { } refusal)
        {
            return new Outcome<CellMeasurement>.Declined(refusal);
        }

        var measurement = Measure(photo, scale!, outer!, request, cancel);
        return measurement is null
            ? new Outcome<CellMeasurement>.Declined(CellRefusals.NoRim(Stage))
            : new Outcome<CellMeasurement>.Found(measurement);
    }

    private EllipseCandidate? Outer(List<EllipseCandidate> candidates)
    {
        // The rim is the largest of the circles that are seen nearly all round.
        const double Nearly = 0.85;
        var best = candidates.Count == 0 ? 0 : candidates.Max(c => c.Coverage);
        return candidates
            .Where(c => c.Coverage >= _options.OuterCoverage && c.Coverage >= Nearly * best)
            .MaxBy(c => c.Ellipse.SemiMajor);
    }

    private CellMeasurement? Measure(Photo photo, ScaleSighting scale, EllipseCandidate outer, MeasureRequest request, CancellationToken cancel)
    {
        var size = Math.Max(1, Math.Max(photo.Gray.Width, photo.Gray.Height) / SearchSide);
        var contrast = ContrastPicture.Of(photo.Colour, outer.Ellipse);
        var curve = ClosedCurve.Of(outer.Ellipse, Points(outer.Ellipse.SemiMajor));
        if (new CircleTracer(contrast).Trace(curve, OuterReach * size, 1, OuterWave * size) is not { } rim)
        {
            return null;
        }

        var middle = new PixelPoint((photo.Gray.Width - 1) / 2.0, (photo.Gray.Height - 1) / 2.0);
        var priors = Priors(photo, request);
        if (ScaleFinder.StartCamera(scale, priors.Focal, middle) is not { } start)
        {
            return null;
        }

        var sightings = ImmutableArray.Create(new CircleSighting(CircleRole.Outer, rim.Points, rim.SeenShare));
        var scene = SceneAdjustment.Solve(scale, sightings, start, priors, true);
        var picture = LightPicture.From(photo.Gray);
        foreach (var circle in InnerCircles.Find(picture, scene.Camera, scene.Circles[0], _options.InnerStrength, cancel))
        {
            cancel.ThrowIfCancellationRequested();
            var centre = scene.Circles[0].Centre;
            var expected = ClosedCurve.Of(
                scene.Camera,
                centre with { Z = centre.Z + circle.Depth },
                circle.Radius,
                Points(circle.Radius * scene.Camera.PixelsPerMillimetre(centre)));
            if (new CircleTracer(picture).Trace(expected, InnerReach, 1, InnerWave) is { } traced && traced.SeenShare >= SmallestSeenShare)
            {
                sightings = sightings.Add(new CircleSighting(circle.Role, traced.Points, traced.SeenShare));
            }
        }

        if (sightings.Length > 1)
        {
            scene = SceneAdjustment.Solve(scale, sightings, scene.Camera, priors, false);
        }

        return CellReport.Of(scale, sightings, scene, photo, request, _options);
    }

    private static int Points(double radiusPixels) => (int)Math.Clamp(PointsPerRadiusPixel * radiusPixels, FewestPoints, MostPoints);

    private ScenePriors Priors(Photo photo, MeasureRequest request)
    {
        var known = photo.Lens.FocalLength;
        return new ScenePriors
        {
            Focal = known?.Pixels ?? (_options.AssumedFocal * Math.Max(photo.Gray.Width, photo.Gray.Height)),
            FocalRelative = known is null ? _options.AssumedFocalRelative : _options.KnownFocalRelative,
            RimHeight = request.PlaneOffset?.Millimetres ?? 0,
            RimHeightUncertainty = request.PlaneOffset is null ? _options.UnknownOffsetMillimetres : _options.KnownOffsetMillimetres,
            ConcentricityUncertainty = _options.ConcentricityMillimetres,
            ClearDepthUncertainty = _options.ClearDepthMillimetres,
            StopDepth = _options.StopDepthMillimetres,
            StopDepthUncertainty = _options.StopDepthUncertaintyMillimetres,
            EdgeShiftUncertainty = _options.EdgeShiftPixels,
            DistortionUncertainty = _options.DistortionRelative,
            RoundnessPixels = _options.RoundnessPixels,
            ScaleInflation = _options.ScaleInflation,
        };
    }
}
