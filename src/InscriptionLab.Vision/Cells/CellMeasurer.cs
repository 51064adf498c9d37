using System;
using System.Collections.Immutable;
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
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.TiltRadians, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.LineTurnRadians, nameof(options));
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
        var scale = AnyScale.Find(photo, request.Scale, cancel);
        var candidates = CellFinder.Find(photo.Colour, scale?.Outline ?? [], cancel);
        var rim = OuterRim.Choose(photo, candidates, _options.OuterCoverage, cancel);
        if (CellRefusals.Of(Stage, scale, rim is not null, request) is { } refusal)
        {
            return new Outcome<CellMeasurement>.Declined(refusal);
        }

        var measurement = Measure(photo, scale!, rim!, request, cancel);
        return new Outcome<CellMeasurement>.Found(measurement);
    }

    private CellMeasurement Measure(Photo photo, ScaleSighting scale, TracedCircle rim, MeasureRequest request, CancellationToken cancel)
    {
        var middle = new PixelPoint((photo.Gray.Width - 1) / 2.0, (photo.Gray.Height - 1) / 2.0);
        var priors = Priors(photo, request, _options);
        var start = ScaleFinder.StartCamera(scale, priors.Focal, middle);
        var sightings = ImmutableArray.Create(Sighting(CircleRole.Outer, rim, photo));
        var scene = SceneAdjustment.Solve(scale, sightings, start, priors, true);
        var picture = LightPicture.From(photo.Gray);
        var inner = InnerCircles.Find(picture, scene.Camera, scene.Circles[0], _options, cancel);
        foreach (var circle in inner.Chosen)
        {
            sightings = sightings.Add(Sighting(circle.Role, circle.Trace, photo));
        }

        if (sightings.Length > 1)
        {
            scene = SceneAdjustment.Solve(scale, sightings, scene.Camera, priors, false);
        }

        // A board's corners tell which way it is tilted; a line or a disc leaves two tilts that show a circle alike.
        SceneSolution? other = null;
        if (scale.Kind is ScaleKind.Points or ScaleKind.Disc or ScaleKind.Rule)
        {
            other = SceneAdjustment.Mirrored(scale, sightings, scene, priors);
            (scene, other) = other.ShareBeside(scene) > 0.5 ? (other, scene) : (scene, other);
        }

        return CellReport.Of(scale, sightings, scene, other, photo, picture, request, _options) with { Others = CellReport.Others(inner.Others, scene) };
    }

    private static CircleSighting Sighting(CircleRole role, TracedCircle trace, Photo photo) =>
        new(role, trace.Points, trace.SeenShare, BurntEdges.Share(photo.Gray, trace.Points));

    /// <summary>Gives what is known of a photo before anything is read in it.</summary>
    internal static ScenePriors Priors(Photo photo, MeasureRequest request, CellMeasurerOptions options)
    {
        var known = photo.Lens.FocalLength;
        return new ScenePriors
        {
            Focal = known?.Pixels ?? (options.AssumedFocal * Math.Max(photo.Gray.Width, photo.Gray.Height)),
            FocalRelative = known is null ? options.AssumedFocalRelative : request.CameraCalibrated ? options.CalibratedFocalRelative : options.KnownFocalRelative,
            RimHeight = request.PlaneOffset?.Millimetres ?? 0,
            // An unknown height has a row of its own in the budget: as a loose prior it would let readings of the rim move the height at random.
            RimHeightUncertainty = options.KnownOffsetMillimetres,
            ConcentricityUncertainty = options.ConcentricityMillimetres,
            ClearDepthUncertainty = options.ClearDepthMillimetres,
            StopDepth = options.StopDepthMillimetres,
            StopDepthUncertainty = options.StopDepthUncertaintyMillimetres,
            EdgeShiftUncertainty = options.EdgeShiftPixels,
            TiltUncertainty = options.TiltRadians,
            LineTurnUncertainty = options.LineTurnRadians,
            DistortionUncertainty = request.CameraCalibrated ? options.CalibratedDistortionRelative : options.DistortionRelative,
            RoundnessPixels = options.RoundnessPixels,
            BurntEdgePixels = options.BurntEdgePixels,
            ScaleInflation = options.ScaleInflation,
        };
    }
}
