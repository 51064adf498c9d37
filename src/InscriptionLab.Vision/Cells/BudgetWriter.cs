using System;
using System.Collections.Generic;
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
    internal static UncertaintyBudget Write(CircleSighting sighting, SceneSolution scene, int index, ScaleSighting scale, bool heightGiven, CellMeasurerOptions options)
    {
        var shares = scene.DiameterContributions(index);
        var circle = scene.Circles[index];
        var pixels = scene.Camera.PixelsPerMillimetre(circle.Centre);
        var rows = new List<BudgetRow>
        {
            Row(shares, "edge points of the circles", "scatter of the edge points of this photo, correlation counted", ReadDegrees, SceneInput.OuterEdge, SceneInput.ClearEdge, SceneInput.StopEdge),
            new("place of a blurred edge", options.EdgePlacePixels / (sighting.SeenShare * sighting.SeenShare), "px", 2 / pixels, JudgedDegrees, "experience: tone curve, sharpening and glare, more where little of the outline is seen"),
            new("edge beside burnt-out light", options.BurntEdgePixels * sighting.BurntShare, "px", 2 / pixels, JudgedDegrees, "experience: light cut off at white"),
            Row(shares, "readings on the scale, and tilt from them", "scatter of the readings of this photo, correlation counted", ReadDegrees, SceneInput.ScalePoints),
            new("making of the scale", MakingRelative(scale, options), "1", 2 * circle.Radius, JudgedDegrees, scale is { Kind: ScaleKind.Card, SizeAssumed: true } ? "experience: printers, the check line not measured" : "experience: engraved rules and careful prints"),
            Row(shares, "height of the rim above the scale", heightGiven ? "given by the user" : "laid level by eye, if it is level", JudgedDegrees, SceneInput.PlaneOffset),
            new("height of the rim above the scale, not given", heightGiven ? 0 : options.UnknownOffsetMillimetres, "mm", 2 * circle.Radius / scene.RimDistance(), JudgedDegrees, "experience: a card on the table lies up to 13 mm below the rim"),
            Row(shares, "focal length", "EXIF data, or assumed", JudgedDegrees, SceneInput.Focal),
            Row(shares, "distortion left by the lens", "experience", JudgedDegrees, SceneInput.Distortion),
            Row(shares, "roundness as seen, and tilt from it", "experience: making, light and shade", JudgedDegrees, SceneInput.Roundness),
            Row(shares, "depth below the rim", "assumed, and seen as far as the photo is tilted", JudgedDegrees, SceneInput.Depth),
            Row(shares, "concentricity", "experience: turned parts", JudgedDegrees, SceneInput.Concentricity),
        };
        return new UncertaintyBudget([.. rows.Where(r => r.Contribution > 0)]);
    }

    /// <summary>Gives the relative uncertainty of the scale's own making.</summary>
    internal static double MakingRelative(ScaleSighting scale, CellMeasurerOptions options) =>
        scale is { Kind: ScaleKind.Card, SizeAssumed: true } ? options.UnmeasuredPrintRelative : options.ScaleMakingRelative;

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
