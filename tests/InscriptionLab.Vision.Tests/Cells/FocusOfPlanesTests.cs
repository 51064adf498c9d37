using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Scales;
using Xunit;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>A scale that is softer than the rim does not lie level with it; rendered cells with one blur for all, and with another for the table.</summary>
public sealed class FocusOfPlanesTests(ITestOutputHelper output)
{
    private const string Said = "not equally sharp";

    [Theory]
    [InlineData(ScaleKind.Checkerboard, 2.2)]
    [InlineData(ScaleKind.Aruco, 2.6)]
    public void A_scale_out_of_focus_is_said_to_lie_in_another_plane_even_where_it_was_stated_to_be_level(ScaleKind kind, double blur)
    {
        var drawn = new RenderedCell { Scale = kind, TableBlurPixels = blur, RimHeight = 6 };

        Assert.Contains(Warnings(drawn, null), warning => warning.Contains(Said, StringComparison.Ordinal) && warning.Contains("Measure how high", StringComparison.Ordinal));
        Assert.Contains(Warnings(drawn, Length.FromMillimetres(0)), warning => warning.Contains(Said, StringComparison.Ordinal) && warning.Contains("Check the height", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(ScaleKind.Checkerboard, 0.4)]
    [InlineData(ScaleKind.Checkerboard, 1.3)]
    [InlineData(ScaleKind.Aruco, 0.7)]
    public void Rim_and_scale_under_one_blur_are_not_parted(ScaleKind kind, double blur) =>
        Assert.DoesNotContain(Warnings(new RenderedCell { Scale = kind, BlurPixels = blur }, Length.FromMillimetres(0)), warning => warning.Contains(Said, StringComparison.Ordinal));

    [Fact]
    public void The_blur_of_a_blurred_step_comes_back()
    {
        foreach (var blur in new[] { 0.5, 1.0, 1.8, 3.0 })
        {
            var margin = EdgeProfile.Margin;
            var light = Enumerable.Range(0, 161 + (2 * margin)).Select(i => Step((i - margin - 80) * EdgeProfile.Step / blur)).ToArray();
            var found = EdgeProfile.FromLight(light, -20).Blur();

            output.WriteLine($"{blur}: {found}");
            Assert.Equal(blur, found!.Value, 0.03);
        }
    }

    /// <summary>The normal distribution function, Abramowitz and Stegun 26.2.17 (error below 7.5e-8): a step that a Gaussian blurs.</summary>
    private static double Step(double x)
    {
        var t = 1 / (1 + (0.2316419 * Math.Abs(x)));
        var tail = Math.Exp(-x * x / 2) / Math.Sqrt(Math.Tau) * t * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return x >= 0 ? 1 - tail : tail;
    }

    private static System.Collections.Immutable.ImmutableArray<string> Warnings(RenderedCell drawn, Length? height)
    {
        var size = drawn.Scale == ScaleKind.Aruco ? RenderedMarkers.Side : 5;
        var request = new MeasureRequest(new ScaleRequest(drawn.Scale!.Value, Length.FromMillimetres(size)), height);
        return Assert.IsType<Outcome<CellMeasurement>.Found>(new CellMeasurer().Run(drawn.Draw(), request, CancellationToken.None)).Value.Warnings;
    }
}
