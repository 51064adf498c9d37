using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Sizes;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using InscriptionLab.Vision.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Sizes;

public sealed class TubeMeasurerTests
{
    [Theory]
    [InlineData(15, 8, 70)]
    [InlineData(20, 0, 0)]
    [InlineData(12, 14, 200)]
    public void A_tube_beside_a_board_on_one_table_is_measured_with_its_lettering(double radius, double tilt, double direction)
    {
        var drawn = new TubeBesideScale { Radius = radius, TiltDegrees = tilt, TiltDirectionDegrees = direction };
        var sizes = Run(drawn, new MeasureRequest(Board, null))!;
        AssertHolds(2 * radius, sizes.Diameter);
        Assert.Equal(2 * radius, sizes.Diameter.Value.Millimetres, 0.04 * radius);
        var line = Assert.Single(sizes.Lines);
        AssertHolds(drawn.LetterHeight, line.Tallest);
        Assert.Equal(drawn.LetterHeight, line.Median.Millimetres, 0.12);
        AssertHolds(drawn.LettersFrom + drawn.HalfLength, line.FromEnd!);
        Assert.Contains(sizes.Notes, note => note.Contains("one table", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(15, 8, 70)]
    [InlineData(20, 0, 0)]
    [InlineData(12, 14, 200)]
    public void A_tube_that_the_finder_found_is_measured(double radius, double tilt, double direction)
    {
        var drawn = new TubeBesideScale { Radius = radius, TiltDegrees = tilt, TiltDirectionDegrees = direction };
        var photo = drawn.Draw();
        using var finder = new TubeFinder(null, ModelsOfProject.Shelf());
        var tube = Assert.IsType<Outcome<Tube>.Found>(finder.Run(photo, CancellationToken.None)).Value;

        var sizes = new TubeMeasurer().Run(photo, tube, new Readings.Reading("none", [], []), new MeasureRequest(Board, null), CancellationToken.None)!;

        AssertHolds(2 * radius, sizes.Diameter);
        Assert.Equal(2 * radius, sizes.Diameter.Value.Millimetres, 0.04 * radius);
    }

    [Fact]
    public void A_board_that_lies_higher_than_the_table_is_allowed_for_where_the_height_is_given()
    {
        var drawn = new TubeBesideScale { BoardThickness = 9 };
        var given = Run(drawn, new MeasureRequest(Board, Length.FromMillimetres(drawn.Radius - drawn.BoardThickness)))!;
        AssertHolds(2 * drawn.Radius, given.Diameter);
        Assert.Equal(2 * drawn.Radius, given.Diameter.Value.Millimetres, 0.3);
        Assert.Empty(given.Notes);
    }

    [Fact]
    public void A_line_whose_tube_leaves_the_photo_at_both_ends_has_no_distance_from_an_end() =>
        Assert.Null(Assert.Single(Run(new TubeBesideScale { HalfLength = 140 }, new MeasureRequest(Board, null))!.Lines).FromEnd);

    [Fact]
    public void Without_a_scale_there_are_no_sizes() =>
        Assert.Null(Run(new TubeBesideScale(), MeasureRequest.Nothing));

    /// <summary>Draws outlines of random cylinders, no pixels: the geometry alone gives the radius to a millionth.</summary>
    [Fact]
    public void The_radius_of_exact_outlines_is_exact()
    {
        var random = new Random(5);
        for (var i = 0; i < 200; i++)
        {
            var drawn = new TubeBesideScale { Radius = 8 + (20 * random.NextDouble()), TiltDegrees = 25 * random.NextDouble(), TiltDirectionDegrees = 360 * random.NextDouble(), Distance = 200 + (300 * random.NextDouble()) };
            var (first, second) = drawn.Outlines;
            var cylinder = SeenCylinder.Of(drawn.Camera, second, first, null)!;
            Assert.Equal(drawn.Radius, cylinder.Radius, drawn.Radius * 1e-6);
            Assert.Equal(drawn.Radius, SeenCylinder.Of(drawn.Camera, first, second, drawn.Radius)!.Radius, drawn.Radius * 1e-6);
            var box = drawn.Boxes[0];
            var (top, foot) = (cylinder.ToSurface(box.TopLeft)!.Value, cylinder.ToSurface(box.BottomLeft)!.Value);
            Assert.Equal(drawn.LetterHeight, Math.Abs(top.Round - foot.Round), 1e-6);
            Assert.Equal(top.Along, foot.Along, 1e-6);
        }
    }

    private static ScaleRequest Board { get; } = new(ScaleKind.Checkerboard, Length.FromMillimetres(5));

    private static TubeSizes? Run(TubeBesideScale drawn, MeasureRequest request)
    {
        var (first, second) = drawn.Outlines;
        var middle = PixelLength.FromPixels((first.Start.DistanceTo(second.Start).Pixels + first.End.DistanceTo(second.End).Pixels) / 2);
        var tube = new Tube(
            new PixelSegment(Middle(first.Start, second.Start), Middle(first.End, second.End)),
            [InFrame(first), InFrame(second)],
            middle,
            null!,
            Probability.One,
            []);
        var letters = drawn.Boxes.Select(box => new Letter("I", Probability.One, [], box, default));
        var reading = new Readings.Reading("drawn", [new LineReading(null!, [.. letters], Probability.One, null)], []);
        return new TubeMeasurer().Run(drawn.Draw(), tube, reading, request, CancellationToken.None);
    }

    /// <summary>Cuts an outline at the frame, as a photo does.</summary>
    private static PixelSegment InFrame(PixelSegment outline)
    {
        PixelPoint Cut(PixelPoint from, PixelPoint to)
        {
            var x = Math.Clamp(from.X, 0, TubeBesideScale.Width - 1);
            return new PixelPoint(x, from.Y + ((to.Y - from.Y) * (x - from.X) / (to.X - from.X)));
        }

        return new PixelSegment(Cut(outline.Start, outline.End), Cut(outline.End, outline.Start));
    }

    private static PixelPoint Middle(PixelPoint one, PixelPoint other) => new((one.X + other.X) / 2, (one.Y + other.Y) / 2);

    private static void AssertHolds(double truth, Measured measured) =>
        Assert.Equal(truth, measured.Value.Millimetres, measured.ExpandedUncertainty.Millimetres);
}
