using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Turns an adjusted scene into the measurement that is reported: budgets, ellipses, warnings.</summary>
internal static class CellReport
{
    /// <summary>Points of a projected circle from which its ellipse is fitted; they lie on it exactly.</summary>
    private const int EllipsePoints = 24;

    /// <summary>Gives the measurement.</summary>
    internal static CellMeasurement Of(ScaleSighting scale, ImmutableArray<CircleSighting> sightings, SceneSolution scene, SceneSolution? other, Photo photo, LightPicture picture, MeasureRequest request, CellMeasurerOptions options)
    {
        var circles = ImmutableArray.CreateBuilder<CellCircle>();
        for (var i = 0; i < scene.Circles.Length; i++)
        {
            circles.Add(Circle(sightings[i], scene, other, i, scale, request.PlaneOffset is not null, options));
        }

        var rim = scene.Circles[0].Centre;
        var heightRelative = request.PlaneOffset is null ? options.UnknownOffsetMillimetres / scene.RimDistance() : 0;
        var relative = Math.Sqrt(Square(scene.RelativeScaleUncertainty(0)) + Square(BudgetWriter.MakingRelative(scale, options)) + Square(heightRelative) + Square(BudgetWriter.EdgeRelative(scale, scene, options)));
        var found = new ScaleFound(
            scale.Kind,
            scale.Size,
            scale.SizeAssumed,
            new ImageScale(scene.Camera.PixelsPerMillimetre(rim), relative),
            scale.Shown);
        var offsetUncertainty = request.PlaneOffset is null ? options.UnknownOffsetMillimetres : options.KnownOffsetMillimetres;
        return new CellMeasurement(
            found,
            circles.ToImmutable(),
            Expanded(scene.RimHeight, offsetUncertainty),
            scene.Camera.Tilt,
            Expanded(scene.RimDistance(), scene.DistanceUncertainty()),
            CellWarnings.Of(scale, sightings, scene, other, photo, picture, request, options));
    }

    /// <summary>Gives the circles that were given no role, about the axis of the adjusted rim.</summary>
    internal static ImmutableArray<OtherCircle> Others(List<InnerCircle> others, SceneSolution scene) => [.. others.Select(circle => new OtherCircle(
        Length.FromMillimetres(2 * circle.Radius),
        Length.FromMillimetres(circle.Depth),
        circle.Trace.SeenShare,
        Ellipse(scene.Camera, new SceneCircle(circle.Role, scene.Circles[0].Centre with { Z = scene.Circles[0].Centre.Z + circle.Depth }, circle.Radius))))];

    private static CellCircle Circle(CircleSighting sighting, SceneSolution scene, SceneSolution? other, int index, ScaleSighting scale, bool heightGiven, CellMeasurerOptions options)
    {
        var circle = scene.Circles[index];
        var diameter = 2 * circle.Radius;
        var budget = BudgetWriter.Write(sighting, scene, other, index, scale, heightGiven, options);
        var measured = new Measured(
            Length.FromMillimetres(diameter),
            Length.FromMillimetres(budget.ExpandedUncertainty),
            UncertaintyBudget.CoverageFactor);
        return new CellCircle(sighting.Role, measured, Ellipse(scene.Camera, circle), budget, sighting.SeenShare) { Edge = sighting.Points };
    }

    private static PixelEllipse Ellipse(PlaneCamera camera, SceneCircle circle)
    {
        var points = ClosedCurve.Of(camera, circle.Centre, circle.Radius, EllipsePoints).Select(p => p.At).ToArray();
        var ellipse = EllipseFit.Direct(points) ?? EllipseFit.Geometric(points);
        return new PixelEllipse(
            new PixelPoint(ellipse.CentreX, ellipse.CentreY),
            PixelLength.FromPixels(ellipse.SemiMajor),
            PixelLength.FromPixels(ellipse.SemiMinor),
            Angle.FromRadians(ellipse.Rotation));
    }

    private static Measured Expanded(double millimetres, double standard) => new(
        Length.FromMillimetres(millimetres),
        Length.FromMillimetres(UncertaintyBudget.CoverageFactor * standard),
        UncertaintyBudget.CoverageFactor);

    private static double Square(double value) => value * value;
}
