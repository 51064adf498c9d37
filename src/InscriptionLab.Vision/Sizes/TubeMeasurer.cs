using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Sizes;

/// <summary>Measures a tube and its lettering in millimetres from a scale beside it.</summary>
public sealed class TubeMeasurer
{
    /// <summary>Uncertainty of where an outline of the tube lies, in pixels: outlines are found less exactly than edges of a cell are (seen on rendered tubes: diameters within a third of a per cent).</summary>
    private const double OutlinePixels = 0.8;

    /// <summary>Uncertainty of a letter's top and of its foot, in pixels: boxes follow the reader's columns and the ink's rows.</summary>
    private const double LetterPixels = 1.5;

    /// <summary>Uncertainty of where an outline ends, in pixels.</summary>
    private const double EndPixels = 8;

    /// <summary>An outline that ends nearer to the frame than this share of the photo's longer side is cut by it.</summary>
    private const double FrameShare = 0.015;

    /// <summary>Degrees of freedom of an uncertainty judged from experience to be right within a fifth (GUM, JCGM 100:2008, equation G.3).</summary>
    private const double JudgedDegrees = 12.5;

    /// <summary>Uncertainty of the height where tube and scale are taken to lie on one table, in millimetres: the scale's own thickness, a cloth (common practice).</summary>
    private const double TableMillimetres = 0.7;

    private readonly CellMeasurerOptions _options;

    /// <summary>Makes a measurer.</summary>
    /// <param name="options">What is taken for known of cameras and scales; null for the defaults.</param>
    public TubeMeasurer(CellMeasurerOptions? options = null) => _options = options ?? new CellMeasurerOptions();

    /// <summary>Measures the tube.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="tube">The tube in it.</param>
    /// <param name="reading">What was read.</param>
    /// <param name="request">Scale, and height of the tube's axis above it; null where both lie on one table.</param>
    /// <param name="cancel">Stops the search for the scale.</param>
    /// <returns>The sizes, or null where no scale is seen, its size is not known, or tube and scale do not lie along one plane.</returns>
    public TubeSizes? Run(Photo photo, Tube tube, Readings.Reading reading, MeasureRequest request, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(tube);
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(request);

        // Rows of letters pass for a rule, so that one must be named.
        var scale = request.Scale is null ? ScaleFinder.Find(photo.Gray, new ScaleRequest(ScaleKind.Card, null), cancel) : AnyScale.Find(photo, request.Scale, cancel);
        if (scale is null || (scale.SizeAssumed && scale.Kind is not (ScaleKind.Card or ScaleKind.Rule)))
        {
            return null;
        }

        var middle = new PixelPoint((photo.Gray.Width - 1) / 2.0, (photo.Gray.Height - 1) / 2.0);
        var priors = CellMeasurer.Priors(photo, request with { PlaneOffset = null }, _options);
        var scene = SceneAdjustment.Solve(scale, [], ScaleFinder.StartCamera(scale, priors.Focal, middle), priors, true);
        var above = request.PlaneOffset?.Millimetres;
        return SeenCylinder.Of(scene.Camera, tube.Silhouettes[0], tube.Silhouettes[1], above) is { } cylinder
            ? Sizes(photo, tube, reading, scale, scene, cylinder, above, priors.DistortionUncertainty)
            : null;
    }

    private TubeSizes Sizes(Photo photo, Tube tube, Readings.Reading reading, ScaleSighting scale, SceneSolution scene, SeenCylinder cylinder, double? above, double distortion)
    {
        double Diameter(PlaneCamera camera, double? height) => 2 * (SeenCylinder.Of(camera, tube.Silhouettes[0], tube.Silhouettes[1], height)?.Radius ?? cylinder.Radius);
        var diameter = 2 * cylinder.Radius;
        var pixels = tube.Diameter.Pixels / diameter;
        var height = above is null ? TableMillimetres : _options.KnownOffsetMillimetres;

        // A scale that lies a millimetre higher is a camera a millimetre nearer.
        var perHeight = Math.Abs(above is { } given ? Diameter(scene.Camera, given + 1) - diameter : Diameter(scene.Camera, null) - Diameter(Lifted(scene.Camera), null));
        var budget = new UncertaintyBudget(
        [
            new("outlines of the tube", Math.Sqrt(2) * OutlinePixels, "px", 1 / pixels, JudgedDegrees, "experience"),
            new("readings on the scale, tilt and focal length", scene.UncertaintyOf(camera => Diameter(camera, above)), "mm", 1, JudgedDegrees, "scatter of the readings of this photo; focal length from EXIF data, or assumed"),
            new("making of the scale", BudgetWriter.MakingRelative(scale, _options), "1", diameter, JudgedDegrees, BudgetWriter.MakingBasis(scale)),
            new("place of the scale's own blurred edge", BudgetWriter.EdgeRelative(scale, scene, _options), "1", diameter, JudgedDegrees, "experience: tone curve, sharpening and glare"),
            new("distortion left by the lens", distortion / 2, "1", diameter, JudgedDegrees, "experience"),
            new("height of the tube above the scale", height, "mm", perHeight, JudgedDegrees, above is null ? "tube and scale taken to lie on one table" : "given by the user"),
        ]);
        var notes = ImmutableArray.CreateBuilder<string>();
        if (above is null)
        {
            notes.Add("Tube and scale are taken to lie on one table, the scale beside the tube; where they do not, the sizes hold only once the height of the tube's axis above the scale is given (--plane-offset MM).");
        }

        if (scale.SizeAssumed)
        {
            notes.Add(scale.Kind == ScaleKind.Card
                ? "The check line of the scale card is taken to be 100 mm as printed: measure it with calipers and give its length (--scale card:99.7mm)."
                : "The ticks of the rule are taken to be 1 mm apart: if they are not, give their distance (--scale rule:0.5mm).");
        }

        var relative = budget.CombinedStandardUncertainty / diameter;
        var ends = Ends(photo, tube, cylinder);
        var lines = reading.Lines.Select((line, i) => Line(line, i, cylinder, pixels, relative, ends)).OfType<LineSizes>();
        return new TubeSizes(scale.Kind, Expanded(diameter, budget.CombinedStandardUncertainty), budget, [.. lines], notes.ToImmutable());
    }

    private static PlaneCamera Lifted(PlaneCamera camera) => camera with { Shift = camera.Shift - new Vector3D(camera.Row0.Z, camera.Row1.Z, camera.Row2.Z) };

    private static LineSizes? Line(LineReading line, int index, SeenCylinder cylinder, double pixels, double relative, List<double> ends)
    {
        var heights = new List<double>();
        var along = new List<double>();
        foreach (var letter in line.Letters.Where(l => !l.IsSpace && l.InPhoto != default))
        {
            var corners = new[] { letter.InPhoto.TopLeft, letter.InPhoto.TopRight, letter.InPhoto.BottomRight, letter.InPhoto.BottomLeft }.Select(cylinder.ToSurface).ToArray();
            if (corners.Any(c => c is null))
            {
                continue;
            }

            double Distance(int one, int other) => Math.Sqrt(Math.Pow(corners[one]!.Value.Along - corners[other]!.Value.Along, 2) + Math.Pow(corners[one]!.Value.Round - corners[other]!.Value.Round, 2));
            heights.Add((Distance(0, 3) + Distance(1, 2)) / 2);
            along.AddRange(corners.Select(c => c!.Value.Along));
        }

        if (heights.Count == 0)
        {
            return null;
        }

        var tallest = heights.Max();
        var uncertainty = Math.Sqrt(Math.Pow(Math.Sqrt(2) * LetterPixels / pixels, 2) + Math.Pow(relative * tallest, 2));
        Measured? fromEnd = null;
        if (ends.Count > 0)
        {
            var distance = ends.Min(end => Math.Min(Math.Abs(along.Min() - end), Math.Abs(along.Max() - end)));
            fromEnd = Expanded(distance, Math.Sqrt(Math.Pow(EndPixels / pixels, 2) + Math.Pow(LetterPixels / pixels, 2) + Math.Pow(relative * distance, 2)));
        }

        return new LineSizes(index, Expanded(tallest, uncertainty), Length.FromMillimetres(heights.Order().ElementAt(heights.Count / 2)), fromEnd);
    }

    /// <summary>Gives the places along the axis at which both outlines end inside the photo.</summary>
    private static List<double> Ends(Photo photo, Tube tube, SeenCylinder cylinder)
    {
        var margin = FrameShare * Math.Max(photo.Gray.Width, photo.Gray.Height);
        bool Inside(PixelPoint at) => at.X > margin && at.Y > margin && at.X < photo.Gray.Width - 1 - margin && at.Y < photo.Gray.Height - 1 - margin;
        var (one, other) = (tube.Silhouettes[0], tube.Silhouettes[1]);
        var same = one.Start.DistanceTo(other.Start).Pixels + one.End.DistanceTo(other.End).Pixels <= one.Start.DistanceTo(other.End).Pixels + one.End.DistanceTo(other.Start).Pixels;
        var pairs = same ? new[] { (one.Start, other.Start), (one.End, other.End) } : [(one.Start, other.End), (one.End, other.Start)];
        return [.. pairs.Where(p => Inside(p.Item1) && Inside(p.Item2)).Select(p => (cylinder.AlongOfOutline(p.Item1) + cylinder.AlongOfOutline(p.Item2)) / 2)];
    }

    private static Measured Expanded(double value, double standard) =>
        new(Length.FromMillimetres(value), Length.FromMillimetres(UncertaintyBudget.CoverageFactor * standard), UncertaintyBudget.CoverageFactor);
}
