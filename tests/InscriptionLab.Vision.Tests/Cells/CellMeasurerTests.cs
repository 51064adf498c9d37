using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Cells;
using Xunit;

namespace InscriptionLab.Vision.Tests.Cells;

public sealed class CellMeasurerTests
{
    [Theory]
    [InlineData("checkerboard:5mm", ScaleKind.Checkerboard)]
    [InlineData("rule:1mm", ScaleKind.Rule)]
    [InlineData("aruco:12mm", ScaleKind.Aruco)]
    [InlineData("card:100mm", ScaleKind.Card)]
    public void A_drawn_cell_is_measured_within_a_quarter_of_a_per_cent(string scale, ScaleKind kind)
    {
        var drawn = new RenderedCell { Scale = kind };
        var measurement = Found(drawn, Request(scale));
        Assert.Equal(3, measurement.Circles.Length);
        AssertNear(drawn.OuterMillimetres, measurement.Circles[0], 0.0025);
        AssertNear(drawn.ClearMillimetres, measurement.Circles[1], 0.0025);
        AssertNear(drawn.StopMillimetres, measurement.Circles[2], 0.01);
    }

    [Theory]
    [InlineData("id1", ScaleKind.Id1)]
    [InlineData("disc:23.25mm", ScaleKind.Disc)]
    [InlineData("disc:23.25mm@", ScaleKind.Disc)]
    [InlineData("points:50mm@", ScaleKind.Points)]
    public void A_bank_card_a_coin_and_two_points_give_the_scale(string scale, ScaleKind kind)
    {
        var drawn = new RenderedCell { Scale = kind, Distance = kind == ScaleKind.Id1 ? 250 : 190, Aim = kind == ScaleKind.Id1 ? -5 : 10 };
        var coin = drawn.Camera.Project(new Vector3D(3, 18, 0));
        var text = !scale.EndsWith('@') ? scale
            : kind == ScaleKind.Disc ? string.Create(CultureInfo.InvariantCulture, $"{scale}{coin.X:F0},{coin.Y:F0}")
            : string.Create(CultureInfo.InvariantCulture, $"{scale}{drawn.Dots.Near.X:F1},{drawn.Dots.Near.Y:F1}/{drawn.Dots.Far.X:F1},{drawn.Dots.Far.Y:F1}");
        var measurement = Found(drawn, Request(text) with { PlaneOffset = Length.FromMillimetres(0) });
        Assert.Equal(kind, measurement.Scale.Kind);
        Assert.Equal(3, measurement.Circles.Length);
        AssertNear(drawn.OuterMillimetres, measurement.Circles[0], 0.004);
        AssertCovers(drawn.OuterMillimetres, measurement.Circles[0]);
        AssertNear(drawn.ClearMillimetres, measurement.Circles[1], 0.005);
        AssertCovers(drawn.ClearMillimetres, measurement.Circles[1]);
    }

    [Fact]
    public void A_circle_that_is_given_no_role_is_told_beside_those_that_are()
    {
        var measurement = Found(new RenderedCell { StepMillimetres = 34.5 }, Request("checkerboard:5mm"));

        double[] seen = [.. measurement.Circles.Select(circle => circle.Diameter.Value.Millimetres), .. measurement.Others.Select(circle => circle.Diameter.Millimetres)];
        Assert.Contains(seen, diameter => Math.Abs(diameter - 34.5) < 0.3);
        Assert.Contains(seen, diameter => Math.Abs(diameter - 29) < 0.3);
        Assert.NotEmpty(measurement.Others);
        Assert.All(measurement.Others, other => Assert.DoesNotContain(measurement.Circles, circle => Math.Abs(circle.Diameter.Value.Millimetres - other.Diameter.Millimetres) < 0.01 * other.Diameter.Millimetres));
    }

    [Fact]
    public void A_coin_without_its_diameter_is_declined()
    {
        var request = new MeasureRequest(new ScaleRequest(ScaleKind.Disc, null), null);
        var declined = Assert.IsType<Outcome<CellMeasurement>.Declined>(Run(new RenderedCell { Scale = ScaleKind.Disc }, request));
        Assert.Contains("diameter", declined.Refusal.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ScaleKind.Checkerboard)]
    [InlineData(ScaleKind.Rule)]
    [InlineData(ScaleKind.Aruco)]
    public void The_kind_of_scale_is_found_without_being_named(ScaleKind kind)
    {
        var outcome = Run(new RenderedCell { Scale = kind }, MeasureRequest.Nothing);
        if (kind == ScaleKind.Rule)
        {
            var found = Assert.IsType<Outcome<CellMeasurement>.Found>(outcome).Value;
            Assert.True(found.Scale.SizeAssumed);
            Assert.Contains(found.Warnings, w => w.Contains("1 mm apart", StringComparison.Ordinal));
        }
        else
        {
            var declined = Assert.IsType<Outcome<CellMeasurement>.Declined>(outcome);
            Assert.Contains("--scale " + (kind == ScaleKind.Aruco ? "aruco" : "checkerboard"), declined.Refusal.Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_scale_card_is_found_by_itself_and_its_unmeasured_print_is_counted()
    {
        var drawn = new RenderedCell { Scale = ScaleKind.Card, ScaleFactor = 0.985 };
        var level = MeasureRequest.Nothing with { PlaneOffset = Length.FromMillimetres(0) };
        var found = Assert.IsType<Outcome<CellMeasurement>.Found>(Run(drawn, level)).Value;
        Assert.Equal("card", found.Scale.Source);
        Assert.Contains(found.Warnings, w => w.Contains("check line", StringComparison.Ordinal));
        AssertCovers(drawn.OuterMillimetres, found.Circles[0]);

        var measured = Assert.IsType<Outcome<CellMeasurement>.Found>(Run(drawn, Request("card:98.5mm") with { PlaneOffset = Length.FromMillimetres(0) })).Value;
        AssertNear(drawn.OuterMillimetres, measured.Circles[0], 0.0025);
    }

    [Fact]
    public void Tilt_neither_shrinks_nor_stretches_a_cell()
    {
        foreach (var tilt in new[] { 0.0, 12, 22 })
        {
            var drawn = new RenderedCell { TiltDegrees = tilt };
            AssertNear(drawn.OuterMillimetres, Found(drawn, Request("checkerboard:5mm")).Circles[0], 0.003);
        }
    }

    [Fact]
    public void A_height_of_the_rim_above_the_scale_is_corrected_where_it_is_given()
    {
        var drawn = new RenderedCell { RimHeight = 8, TiltDegrees = 15 };
        var plain = Found(drawn, Request("checkerboard:5mm"));
        Assert.True(plain.Circles[0].Diameter.Value.Millimetres > 1.03 * drawn.OuterMillimetres);
        Assert.Contains(plain.Warnings, w => w.Contains("--plane-offset", StringComparison.Ordinal));
        AssertCovers(drawn.OuterMillimetres, plain.Circles[0]);
        var corrected = Found(drawn, Request("checkerboard:5mm") with { PlaneOffset = Length.FromMillimetres(8) });
        AssertNear(drawn.OuterMillimetres, corrected.Circles[0], 0.01);
        Assert.DoesNotContain(corrected.Warnings, w => w.Contains("--plane-offset", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_deep_in_a_tilted_cell_is_not_taken_for_smaller_than_it_is()
    {
        var drawn = new RenderedCell { StopDepth = 5, TiltDegrees = 20 };
        AssertNear(drawn.StopMillimetres, Found(drawn, Request("checkerboard:5mm")).Circles[2], 0.006);
    }

    [Fact]
    public void A_cell_without_a_scale_is_declined_with_what_to_do()
    {
        var declined = Assert.IsType<Outcome<CellMeasurement>.Declined>(Run(new RenderedCell { Scale = null }, Request("checkerboard:5mm")));
        Assert.Contains("no checkerboard was found", declined.Refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains("--scale", declined.Refusal.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scale_without_a_cell_is_declined()
    {
        var declined = Assert.IsType<Outcome<CellMeasurement>.Declined>(Run(new RenderedCell { CellPresent = false }, Request("checkerboard:5mm")));
        Assert.Contains("no lens cell", declined.Refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bare_table_is_declined()
    {
        var declined = Assert.IsType<Outcome<CellMeasurement>.Declined>(Run(new RenderedCell { CellPresent = false, Scale = null }, MeasureRequest.Nothing));
        Assert.Contains("No lens cell", declined.Refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_photo_gives_the_same_result_twice()
    {
        var photo = new RenderedCell().Draw();
        CellMeasurement Once() => Assert.IsType<Outcome<CellMeasurement>.Found>(new CellMeasurer().Run(photo, Request("checkerboard:5mm"), CancellationToken.None)).Value;
        Assert.Equal(Once().Circles.Select(c => c.Diameter), Once().Circles.Select(c => c.Diameter));
    }

    /// <summary>What is taken for known is drawn from the very distributions that the budget states, so about 95 of 100 intervals with k = 2 must hold the truth; fewer than 88 of 100 in 24 photos is very unlikely by chance. It takes minutes and is run by hand. Last result, over 138 photos: 414 of 414 circles found, one photo's rim taken too small; 406 intervals hold the truth, 271 of 279 where the height of the rim is given.</summary>
    [Fact(Explicit = true)]
    public void Intervals_with_k_2_hold_the_truth_about_as_often_as_they_say()
    {
        var (held, all) = (0, 0);
        foreach (var drawn in RenderedCellDraws.Take(24, 7))
        {
            // A photo that is declined gives no interval; the count below allows two of them.
            if (Run(drawn.Cell, drawn.Request) is not Outcome<CellMeasurement>.Found found)
            {
                continue;
            }

            foreach (var (truth, circle) in Truths(drawn.Cell, found.Value))
            {
                all++;
                held += Math.Abs(circle.Diameter.Value.Millimetres - truth) <= circle.Diameter.ExpandedUncertainty.Millimetres ? 1 : 0;
            }
        }

        Assert.True(all >= 66, $"only {all} circles were found");
        Assert.True(held >= 0.88 * all, $"{held} of {all} intervals hold the truth");
    }

    internal static IEnumerable<(double Truth, CellCircle Circle)> Truths(RenderedCell cell, CellMeasurement measurement) =>
        measurement.Circles.Select(c => (
            c.Role switch
            {
                CircleRole.Outer => cell.OuterMillimetres,
                CircleRole.Clear => cell.ClearMillimetres,
                _ => cell.StopMillimetres,
            },
            c));

    private static void AssertNear(double truth, CellCircle circle, double relative)
    {
        var error = Math.Abs(circle.Diameter.Value.Millimetres - truth) / truth;
        Assert.True(error <= relative, $"{circle.Role}: {circle.Diameter.Value.Millimetres:F3} mm, truth {truth:F3} mm");
    }

    private static void AssertCovers(double truth, CellCircle circle) =>
        Assert.Equal(truth, circle.Diameter.Value.Millimetres, circle.Diameter.ExpandedUncertainty.Millimetres);

    private static MeasureRequest Request(string scale)
    {
        Assert.True(ScaleRequest.TryParse(scale, out var request, out var problem), problem);
        return new MeasureRequest(request, null);
    }

    private static Outcome<CellMeasurement> Run(RenderedCell cell, MeasureRequest request) =>
        new CellMeasurer().Run(cell.Draw(), request, CancellationToken.None);

    private static CellMeasurement Found(RenderedCell cell, MeasureRequest request)
    {
        var outcome = Run(cell, request);
        return outcome is Outcome<CellMeasurement>.Declined declined
            ? throw new InvalidOperationException(declined.Refusal.Sentence)
            : ((Outcome<CellMeasurement>.Found)outcome).Value;
    }
}
