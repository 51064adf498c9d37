using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Threads;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Threads;

/// <summary>Measures the pitch of a screw thread seen from the side beside a scale, along a line that the user lays over it, parallel to its axis.</summary>
public sealed class ThreadMeasurer
{
    private const string Stage = "thread";

    /// <summary>Samples a pixel along the line.</summary>
    private const double SamplesPerPixel = 2;

    /// <summary>Pixels to each side of the line over which the light is averaged.</summary>
    private const int HalfRows = 3;

    /// <summary>Degrees of freedom of an uncertainty judged from experience (GUM, equation G.3: right within a fifth).</summary>
    private const double JudgedDegrees = 12.5;

    private readonly CellMeasurerOptions _options;

    /// <summary>Makes a measurer.</summary>
    public ThreadMeasurer(CellMeasurerOptions? options = null) => _options = options ?? new CellMeasurerOptions();

    /// <summary>Measures the pitch.</summary>
    /// <param name="photo">Photo of the thread from the side, beside a scale level with its crests.</param>
    /// <param name="along">Line over the thread, in pixels of the upright photo.</param>
    /// <param name="request">What the user says of scale and height.</param>
    /// <param name="cancel">Stops the work.</param>
    public Outcome<ThreadMeasurement> Run(Photo photo, PixelSegment along, MeasureRequest request, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(request);
        if (AnyScale.Find(photo, request.Scale, cancel) is not { } scale)
        {
            return Declined("No scale was found beside the thread, so nothing can be said in millimetres.", "Put a rule, checkerboard or scale card level with the crests, wholly in the photo, and pass --scale with its kind and size.");
        }

        if (CellRefusals.Of(Stage, scale, true, request) is { } refusal)
        {
            return new Outcome<ThreadMeasurement>.Declined(refusal);
        }

        var priors = CellMeasurer.Priors(photo, request, _options);
        var middle = new PixelPoint((photo.Gray.Width - 1) / 2.0, (photo.Gray.Height - 1) / 2.0);
        var scene = SceneAdjustment.Solve(scale, [], ScaleFinder.StartCamera(scale, priors.Focal, middle), priors, true);
        var plane = -(request.PlaneOffset?.Millimetres ?? 0);
        var (from, to) = (scene.Camera.BackProject(along.Start, plane), scene.Camera.BackProject(along.End, plane));
        var step = 1 / (SamplesPerPixel * scene.Camera.PixelsPerMillimetre((from + to) * 0.5));
        return ThreadPitchFit.Of(Light(LightPicture.From(photo.Gray), scene.Camera, from, to, step), step) is { } fit
            ? new Outcome<ThreadMeasurement>.Found(Measurement(fit, scene, (from + to) * 0.5, scale, request))
            : Declined("No even repetition of at least five crests is seen along the line.", "Lay the line over the thread parallel to its axis, and photograph the thread sharp, larger, under light that falls along the tube.");
    }

    private static Outcome<ThreadMeasurement>.Declined Declined(string sentence, string remedy) => new(new Refusal(Stage, sentence, remedy));

    private static double[] Light(LightPicture picture, PlaneCamera camera, Vector3D from, Vector3D to, double step)
    {
        var length = (to - from).Norm;
        var (ux, uy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var pixel = SamplesPerPixel * step;
        var light = new double[(int)(length / step)];
        for (var i = 0; i < light.Length; i++)
        {
            for (var row = -HalfRows; row <= HalfRows; row++)
            {
                var at = camera.Project(new Vector3D(from.X + (i * step * ux) - (row * pixel * uy), from.Y + (i * step * uy) + (row * pixel * ux), from.Z));
                light[i] += picture.At(at.X, at.Y) / ((2 * HalfRows) + 1);
            }
        }

        return light;
    }

    private ThreadMeasurement Measurement(ThreadPitchFit fit, SceneSolution scene, Vector3D at, ScaleSighting scale, MeasureRequest request)
    {
        var pitch = fit.PitchMillimetres;
        var distance = -scene.Camera.Centre.Z + at.Z;
        var given = request.PlaneOffset is not null;
        var budget = new UncertaintyBudget(
        [
            new("crests about a straight line", fit.StandardUncertainty, "mm", 1, fit.Crests - 2, "scatter of the crests of this photo"),
            new("readings on the scale, and tilt from them", scene.RelativeScaleUncertaintyAt(at), "1", pitch, JudgedDegrees, "scatter of the readings of this photo, correlation counted"),
            new("making of the scale", BudgetWriter.MakingRelative(scale, _options), "1", pitch, JudgedDegrees, BudgetWriter.MakingBasis(scale)),
            new("place of the scale's own blurred edge", BudgetWriter.EdgeRelative(scale, scene, _options), "1", pitch, JudgedDegrees, "experience: tone curve, sharpening and glare"),
            new("height of the crests above the scale", given ? _options.KnownOffsetMillimetres : _options.UnknownOffsetMillimetres, "mm", pitch / distance, JudgedDegrees, given ? "given by the user" : "not given: a scale on the table lies up to 13 mm lower"),
        ]);
        var expanded = budget.ExpandedUncertainty;
        ImmutableArray<string> warnings = given
            ? []
            : ["How high the crests lie above the scale was not given; the pitch holds for a scale level with them. Pass --plane-offset (0 where they are level): the uncertainty becomes many times smaller."];
        return new ThreadMeasurement(
            new Measured(Length.FromMillimetres(pitch), Length.FromMillimetres(expanded), UncertaintyBudget.CoverageFactor),
            budget,
            fit.Crests,
            ThreadComparison.Of(pitch, expanded),
            warnings);
    }
}
