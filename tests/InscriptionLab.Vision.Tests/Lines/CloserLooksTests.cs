using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

public sealed class CloserLooksTests
{
    private static readonly LineFinderOptions Options = new();
    private static readonly OpenCvSharp.Size Whole = new(1280, 960);

    [Fact]
    public void Blank_metal_is_not_looked_at_again() => Assert.Empty(CloserLooks.Of(DrawnLine.Maps(640, 480, 0.5), 2, Whole, Options));

    [Fact]
    public void A_line_is_looked_at_whole_with_its_surroundings()
    {
        var part = Assert.Single(CloserLooks.Of(DrawnLine.Maps(640, 480, 0.5, DrawnLine.Between(400, 500, 800, 500)), 2, Whole, Options));

        Assert.True(part is { Left: <= 400 - 64, Top: <= 480 - 64, Right: >= 800 + 64, Bottom: >= 520 + 64 }, $"{part}");
        Assert.True(part is { Left: >= 400 - 128, Top: >= 480 - 128, Right: <= 800 + 128, Bottom: <= 520 + 128 }, $"{part}");
    }

    [Fact]
    public void Lines_far_apart_are_looked_at_one_by_one_and_neighbours_together()
    {
        var parts = CloserLooks.Of(
            DrawnLine.Maps(640, 480, 0.5, DrawnLine.Between(100, 100, 300, 100), DrawnLine.Between(100, 160, 300, 160), DrawnLine.Between(900, 800, 1200, 800)), 2, Whole, Options);

        Assert.Equal(2, parts.Count);
    }

    [Fact]
    public void Parts_lie_inside_the_strip_on_the_networks_steps_cover_every_hint_and_never_each_other() =>
        Gen.Select(Gen.Double[0, 1200], Gen.Double[0, 900], Gen.Double[0, 1200], Gen.Double[0, 900], Gen.Double[8, 80]).Sample((x0, y0, x1, y1, height) =>
        {
            var line = DrawnLine.Between(x0, y0, x1 + 20, y1, height);
            var other = DrawnLine.Between(x1, y0, x1 + 60, y0, 20);
            var maps = DrawnLine.Maps(640, 480, 0.5, line, other);
            var parts = CloserLooks.Of(maps, 2, Whole, Options);
            Assert.All(parts, part =>
            {
                Assert.Equal((0, 0), (part.Left % 32, part.Top % 32));
                Assert.True(part.Left >= 0 && part.Top >= 0 && part.Right <= Whole.Width && part.Bottom <= Whole.Height);
                Assert.DoesNotContain(parts, beside => beside != part && beside.IntersectsWith(part));
            });
            for (var row = 0; row < maps.Rows; row++)
            {
                for (var column = 0; column < maps.Columns; column++)
                {
                    if (maps.Core(column, row) >= Options.HintThreshold)
                    {
                        Assert.Contains(parts, part => part.Contains(new OpenCvSharp.Rect(column * 8, row * 8, 8, 8)));
                    }
                }
            }
        }, iter: 200);

    [Fact]
    public void Cells_of_a_part_lie_where_those_of_the_whole_do()
    {
        var line = DrawnLine.Between(400, 500, 800, 500);
        var whole = DrawnLine.Maps(1280, 960, 1, line)[150, 125];
        var shifted = new LineTrace(new PixelPoint(400 - 320, 500 - 416), new PixelPoint(800 - 320, 500 - 416), 0, 40, 1);
        var part = DrawnLine.Maps(640, 256, 1, (320, 416), shifted)[150 - 80, 125 - 104];

        Assert.Equal(whole, part);
    }
}
