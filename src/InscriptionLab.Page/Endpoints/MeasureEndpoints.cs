using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Measuring;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Measuring a lens cell in a photo of the bench, and circles placed by hand.</summary>
internal static class MeasureEndpoints
{
    private static readonly double LargestOffset = MeasureRequest.LargestPlaneOffset.Millimetres;
    private const int MostCircles = 12;
    private const int LongestName = 60;
    private const double LargestSize = 100_000;

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/photos/{photo}/measured", (string photo, MeasuringTable measuring) => Results.Ok(measuring.Of(photo) is { } measured ? Of(measured) : null));
        routes.MapPost("/api/photos/{photo}/measure", Measure);
        routes.MapPost("/api/photos/{photo}/circle", Circle);
        routes.MapPost("/api/photos/{photo}/circles", Keep);
    }

    private static async Task<IResult> Measure(string photo, MeasureAsked asked, BenchTable table, MeasuringTable measuring, CancellationToken cancel)
    {
        if (table.Photo(photo) is not { } found)
        {
            return BenchEndpoints.NotThere();
        }

        ScaleRequest? scale = null;
        if (!string.IsNullOrWhiteSpace(asked.Scale) && !ScaleRequest.TryParse(asked.Scale, out scale, out var problem))
        {
            throw new InscriptionLabException(problem);
        }

        if (asked.OffsetMm is { } offset && !(Math.Abs(offset) <= LargestOffset))
        {
            throw new InscriptionLabException($"The rim lies at most {LargestOffset} mm above or below the scale; check the height.");
        }

        return Results.Ok(Of(await measuring.Measure(found, new MeasureRequest(scale, asked.OffsetMm is { } height ? Length.FromMillimetres(height) : null), cancel)));
    }

    private static IResult Keep(string photo, CirclesRequest asked, BenchTable table, MeasuringTable measuring, Workshop workshop)
    {
        if (table.Photo(photo) is null)
        {
            return BenchEndpoints.NotThere();
        }

        if (asked.Circles.IsDefault || asked.Circles.Length > MostCircles)
        {
            throw new InscriptionLabException($"{MostCircles} circles can be kept at most.");
        }

        var person = ShownName.Of(asked.Person, string.Empty, LongestName) is { Length: > 0 } name ? name : throw new InscriptionLabException("What is kept carries the name of who placed it; write yours first.");
        measuring.Keep(photo, new KeptCircles(person, workshop.Clock.GetUtcNow(), [.. asked.Circles.Select(circle => Placed(photo, circle, measuring))]));
        return Results.NoContent();
    }

    private static IResult Circle(string photo, CircleAsked asked, MeasuringTable measuring)
    {
        var placed = Placed(photo, asked, measuring);
        return Results.Ok(Of(placed.Role, [.. asked.Ellipse!], placed.Diameter, placed.Budget));
    }

    private static KeptCircle Placed(string photo, CircleAsked asked, MeasuringTable measuring)
    {
        if (asked.Ellipse is not { Length: 5 } ellipse || !ellipse.All(double.IsFinite) || !(ellipse[2] > 0 && ellipse[2] < LargestSize && ellipse[3] > 0 && ellipse[3] < LargestSize))
        {
            throw new InscriptionLabException("The circle is not understood; draw it again.");
        }

        (Measured Diameter, UncertaintyBudget Budget) placed;
        double density;
        if (asked.ScalePixels is { } pixels && asked.ScaleMm is { } millimetres)
        {
            density = pixels / millimetres;
            placed = pixels is > 1 and < LargestSize && millimetres is > 0 and < LargestSize
                ? HandCircle.Of(ellipse[2], pixels, millimetres)
                : throw new InscriptionLabException("The scale laid by hand needs two ends apart from each other and the millimetres between them.");
        }
        else
        {
            var scale = measuring.Of(photo)?.Cell?.Scale.AtCell ?? throw new InscriptionLabException("There is no scale yet: measure first, or lay a scale over the photo by hand.");
            placed = HandCircle.Of(ellipse[2], scale);
            density = scale.PixelsPerMillimetre;
        }

        return new KeptCircle(
            asked.Role is "clear" or "stop" ? asked.Role : "outer",
            new PixelEllipse(new PixelPoint(ellipse[0], ellipse[1]), PixelLength.FromPixels(ellipse[2]), PixelLength.FromPixels(ellipse[3]), Angle.FromDegrees(ellipse[4])),
            density,
            placed.Diameter,
            placed.Budget);
    }

    private static MeasureAnswer Of(MeasuredCell measured)
    {
        var cell = measured.Cell;
        return new MeasureAnswer(
            cell is null ? null : MeasurementText.ScaleWords(cell.Scale),
            cell?.Scale.AtCell.PixelsPerMillimetre,
            cell is null ? [] : [.. cell.Scale.Points.Select(point => new[] { Math.Round(point.X, 2), Math.Round(point.Y, 2) })],
            cell is null ? [] : [.. cell.Circles.Select(circle => Of(
                Words.For(circle.Role),
                [circle.Ellipse.Centre.X, circle.Ellipse.Centre.Y, circle.Ellipse.SemiMajor.Pixels, circle.Ellipse.SemiMinor.Pixels, circle.Ellipse.Rotation.Degrees],
                circle.Diameter,
                circle.Budget))],
            measured.Warnings);
    }

    private static CircleAnswer Of(string role, ImmutableArray<double> ellipse, Measured diameter, UncertaintyBudget budget) => new(
        role,
        ellipse,
        diameter.Value.Millimetres,
        diameter.ExpandedUncertainty.Millimetres,
        diameter.CoverageFactor,
        GumStatement.Of(diameter, budget.EffectiveDegreesOfFreedom),
        [.. budget.Rows.OrderByDescending(row => row.Contribution).Select(row => ImmutableArray.Create(
            row.Source,
            string.Create(CultureInfo.InvariantCulture, $"{row.StandardUncertainty:0.####} {row.Unit}"),
            string.Create(CultureInfo.InvariantCulture, $"{row.Contribution:0.0000}"),
            row.Basis))]);
}
