using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;

namespace InscriptionLab.Vision.Cells;

/// <summary>Writes the uncertainty budget of one diameter.</summary>
internal static class BudgetWriter
{
    /// <summary>Degrees of freedom of an uncertainty judged from experience to be right within a fifth (GUM, JCGM 100:2008, equation G.3).</summary>
    private const double JudgedDegrees = 12.5;

    /// <summary>Degrees of freedom of an uncertainty from some hundred readings, after correlation.</summary>
    private const double ReadDegrees = 50;

    /// <summary>Writes the budget of a circle of the scene.</summary>
    internal static UncertaintyBudget Write(CircleSighting sighting, SceneSolution scene, SceneSolution? other, int index, ScaleSighting scale, bool heightGiven, CellMeasurerOptions options)
    {
        var shares = scene.DiameterContributions(index);
        var circle = scene.Circles[index];
        var pixels = scene.Camera.PixelsPerMillimetre(circle.Centre);
        var rows = new List<BudgetRow>
        {
            Row(shares, "edge points of the circles", "scatter of the edge points of this photo, correlation counted", ReadDegrees, SceneInput.OuterEdge, SceneInput.ClearEdge, SceneInput.StopEdge) with { VariesByPhoto = true },
            new("place of a blurred edge", options.EdgePlacePixels / (sighting.SeenShare * sighting.SeenShare), "px", 2 / pixels, JudgedDegrees, "experience: tone curve, sharpening and glare, more where little of the outline is seen"),
            new("edge beside burnt-out light", options.BurntEdgePixels * sighting.BurntShare, "px", 2 / pixels, JudgedDegrees, "experience: light cut off at white"),
            Row(shares, "readings on the scale, and tilt from them", scale.ReadingPixels is { } marked ? string.Create(CultureInfo.InvariantCulture, $"points marked by hand to {marked:0.#} px") : "scatter of the readings of this photo, correlation counted", scale.ReadingPixels is null ? ReadDegrees : JudgedDegrees, SceneInput.ScalePoints) with { VariesByPhoto = true },
            new("place of the scale's own blurred edge", EdgeRelative(scale, scene, options), "1", 2 * circle.Radius, JudgedDegrees, "experience: tone curve, sharpening and glare"),
            new("making of the scale", MakingRelative(scale, options), "1", 2 * circle.Radius, JudgedDegrees, MakingBasis(scale)),
            Row(shares, "height of the rim above the scale", heightGiven ? "given by the user" : "laid level by eye, if it is level", JudgedDegrees, SceneInput.PlaneOffset),
            new("height of the rim above the scale, not given", heightGiven ? 0 : options.UnknownOffsetMillimetres, "mm", 2 * circle.Radius / scene.RimDistance(), JudgedDegrees, "experience: a card on the table lies up to 13 mm below the rim"),
            Uneven(Row(shares, "focal length", "EXIF data, or assumed; more to the near side, where a height counts more", JudgedDegrees, SceneInput.Focal), scene),
            Row(shares, "distortion left by the lens", "experience", JudgedDegrees, SceneInput.Distortion),
            Row(shares, "roundness as seen, and tilt from it", "experience: making, light and shade", JudgedDegrees, SceneInput.Roundness) with { VariesByPhoto = true },
            Row(shares, "depth below the rim", "assumed, and seen as far as the photo is tilted", JudgedDegrees, SceneInput.Depth),
            new("which of two tilts the photo shows", OtherTilt(scene, other, index), "mm", 1, JudgedDegrees, "both fit the readings; the less likely one counts by its probability") { VariesByPhoto = true },
            Row(shares, "concentricity", "experience: turned parts", JudgedDegrees, SceneInput.Concentricity),
        };
        return new UncertaintyBudget([.. rows.Where(r => r.Contribution > 0)]);
    }

    /// <summary>Gives the standard deviation that the other tilt adds to a diameter: how far off it would be, weighed by its probability.</summary>
    internal static double OtherTilt(SceneSolution scene, SceneSolution? other, int index) =>
        other is null ? 0 : Math.Sqrt(other.ShareBeside(scene)) * 2 * Math.Abs(other.Circles[index].Radius - scene.Circles[index].Radius);

    /// <summary>Gives the relative uncertainty of the scale's own making.</summary>
    internal static double MakingRelative(ScaleSighting scale, CellMeasurerOptions options) =>
        scale.Kind switch
        {
            ScaleKind.Card when scale.SizeAssumed => options.UnmeasuredPrintRelative,
            ScaleKind.Id1 => options.Id1MakingRelative,
            ScaleKind.Disc => options.DiscMillimetres / scale.Size.Millimetres,
            _ => options.ScaleMakingRelative,
        };

    /// <summary>Gives the relative uncertainty of a scale whose outline is all there is to see: its blurred edge may be seen too far out or in all round.</summary>
    internal static double EdgeRelative(ScaleSighting scale, SceneSolution scene, CellMeasurerOptions options)
    {
        if (scale.Kind is not (ScaleKind.Id1 or ScaleKind.Disc))
        {
            return 0;
        }

        var pixels = scale.Size.Millimetres * scene.Camera.PixelsPerMillimetre(scene.Camera.BackProject(scale.Middle, 0));
        return 2 * options.EdgePlacePixels / pixels;
    }

    internal static string MakingBasis(ScaleSighting scale) => scale.Kind switch
    {
        ScaleKind.Card when scale.SizeAssumed => "experience: printers, the check line not measured",
        ScaleKind.Id1 => "tolerances of an unused card (ISO/IEC 7810)",
        ScaleKind.Disc => "experience: wear, and a diameter measured with calipers",
        ScaleKind.Points => "experience: a distance measured with care",
        _ => "experience: engraved rules and careful prints",
    };

    /// <summary>Widens a row for the uneven way in which a camera that may be much nearer shows heights: their effect goes with one over the distance, whose logarithm is uncertain.</summary>
    private static BudgetRow Uneven(BudgetRow row, SceneSolution scene)
    {
        const double Even = 1e-6;
        var relative = Math.Min(1, scene.DistanceUncertainty() / scene.RimDistance());
        return relative < Even ? row : row with { StandardUncertainty = row.StandardUncertainty * (Math.Exp(relative) - 1) / relative };
    }

    private static BudgetRow Row(IReadOnlyDictionary<SceneInput, double> shares, string source, string basis, double degrees, params SceneInput[] inputs)
    {
        var sum = 0.0;
        foreach (var input in inputs)
        {
            var share = shares.GetValueOrDefault(input);
            sum += share * share;
        }

        return new BudgetRow(source, Math.Sqrt(sum), "mm", 1, degrees, basis);
    }
}
