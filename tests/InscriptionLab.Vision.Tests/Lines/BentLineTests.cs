using System;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

public sealed class BentLineTests
{
    private static readonly RingStripMap Map = new(
        new RingPlane(Circle(200), Circle(100)), true, 200, Angle.FromDegrees(-180));

    [Fact]
    public void The_box_holds_the_whole_arc_and_stands_as_the_letters_in_its_middle()
    {
        // A quarter turn about the top of the ring (-90 degrees), from radius 180 to 150: corners by plane geometry.
        var quarter = Map.ColumnsPerTurn / 4;
        var box = BentLine.Box(Map, new Quad(new(quarter / 2, 20), new(quarter * 1.5, 20), new(quarter * 1.5, 50), new(quarter / 2, 50)));
        var half = 180 * Math.Sqrt(0.5);
        Near(new PixelPoint(300 - half, 300 - 180), box.TopLeft);
        Near(new PixelPoint(300 + half, 300 - 180), box.TopRight);
        Near(new PixelPoint(300 + half, 300 - (150 * Math.Sqrt(0.5))), box.BottomRight);
    }

    [Fact]
    public void Lettering_with_tops_inward_reads_the_other_way()
    {
        var quarter = Map.ColumnsPerTurn / 4;
        var box = BentLine.Box(Map, new Quad(new(quarter * 1.5, 50), new(quarter / 2, 50), new(quarter / 2, 20), new(quarter * 1.5, 20)));
        Assert.True(box.TopLeft.X > box.TopRight.X);
        Assert.True(box.TopLeft.Y > box.BottomLeft.Y);
    }

    private static PixelEllipse Circle(double radius) => new(new PixelPoint(300, 300), PixelLength.FromPixels(radius), PixelLength.FromPixels(radius), default);

    private static void Near(PixelPoint expected, PixelPoint seen) => Assert.True(expected.DistanceTo(seen).Pixels < 0.1, $"{expected} {seen}");
}
