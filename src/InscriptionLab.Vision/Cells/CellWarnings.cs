using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Writes plain sentences on what was assumed and what was not seen.</summary>
internal static class CellWarnings
{
    /// <summary>Share of an outline below which the user is told that little of it was seen.</summary>
    private const double LittleSeen = 0.5;

    /// <summary>Share of the radius from which the other tilt is worth a sentence: a quarter of a per cent of the diameter.</summary>
    private const double UncertainTilt = 0.005;

    /// <summary>Scatter of readings in pixels beyond which something else than the scale was read: sharp scales are read to a twentieth, blurred ones to a third.</summary>
    private const double LargestScatter = 1;

    /// <summary>Share of an edge beside burnt-out light from which the user is told.</summary>
    private const double MuchBurnt = 0.3;

    /// <summary>Writes the sentences, the weightiest first.</summary>
    internal static ImmutableArray<string> Of(ScaleSighting scale, ImmutableArray<CircleSighting> circles, SceneSolution scene, SceneSolution? other, Photo photo, LightPicture picture, MeasureRequest request, CellMeasurerOptions options)
    {
        var warnings = ImmutableArray.CreateBuilder<string>();
        if (request.PlaneOffset is null)
        {
            var relative = 100 / scene.RimDistance();
            warnings.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"How high the rim lies above the scale was not given. The diameters hold for a scale level with the rim; for each millimetre it lies lower they read about {relative:0.0#} % too large, and the uncertainty counts up to {UncertaintyBudget.CoverageFactor * options.UnknownOffsetMillimetres:0} mm. Measure the height and give it (--plane-offset MM), 0 where scale and rim are level: the uncertainty becomes many times smaller."));
        }

        if (circles.FirstOrDefault(circle => circle.Role == CircleRole.Outer) is { } rim && FocusOfPlanes.Of(picture, scale, rim) is { } focus && (focus.ScaleIsSofter || focus.RimIsSofter))
        {
            warnings.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"Rim and scale are not equally sharp (their edges are blurred by {focus.Rim:0.0} and {focus.Scale:0.0} pixels): they do not lie in one plane. {(request.PlaneOffset is null ? "Measure how high the rim lies above the scale and give that (--plane-offset MM)." : "Check the height that was given, or lift the scale until it is level with the rim.")}"));
        }

        if (scale.SizeAssumed)
        {
            warnings.Add(scale.Kind == ScaleKind.Card
                ? "The check line of the scale card is taken to be 100 mm as printed: measure it with calipers and give its length (--scale card:99.7mm)."
                : "The ticks of the rule are taken to be 1 mm apart: if they are not, give their distance (--scale rule:0.5mm).");
        }

        foreach (var role in Enum.GetValues<CircleRole>())
        {
            var circle = circles.FirstOrDefault(c => c.Role == role);
            if (circle is null)
            {
                warnings.Add($"The {Name(role)} was not seen.");
            }
            else if (circle.SeenShare < LittleSeen)
            {
                warnings.Add(string.Create(CultureInfo.InvariantCulture, $"Only {100 * circle.SeenShare:0} % of the outline of the {Name(role)} was seen: look at its ellipse on the photo before relying on it."));
            }
        }

        foreach (var circle in circles.Where(c => c.BurntShare >= MuchBurnt))
        {
            warnings.Add($"The photo is burnt out beside the edge of the {Name(circle.Role)}, which moves the edge as seen: photograph it with less light or without flash.");
        }

        if (photo.Lens.FocalLength is null)
        {
            warnings.Add("The file does not say its focal length; it is estimated from the photo and counted in the uncertainty.");
        }

        if (scale.ReadingPixels is null && scene.ScaleScatter > LargestScatter)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"The readings on the scale scatter by {scene.ScaleScatter:0.0} pixels about a flat scale of the kind given: do not rely on these diameters before you have looked at the scale's marks on the photo."));
        }

        if (BudgetWriter.OtherTilt(scene, other, 0) > UncertainTilt * scene.Circles[0].Radius)
        {
            warnings.Add("The scale does not tell which way the photo is tilted, and the two ways give other diameters; the uncertainty counts both. Photograph from straight above, or lay a checkerboard, a bank card or the printed scale card beside the cell.");
        }

        if (scene.Camera.Tilt.Degrees > options.LargestTiltDegrees)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"The photo looks at the cell under {scene.Camera.Tilt.Degrees:0} degrees: photograph it from straight above."));
        }

        return warnings.ToImmutable();
    }

    private static string Name(CircleRole role) => role switch
    {
        CircleRole.Outer => "outer rim",
        CircleRole.Clear => "clear aperture",
        _ => "aperture stop",
    };
}
