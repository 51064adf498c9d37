using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Lines;
using InscriptionLab.Vision.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

public sealed class LineTracerTests
{
    private static readonly LineFinderOptions Options = new();
    private static readonly LineJoiner Joiner = new(Options);

    [Fact]
    public void A_line_in_any_direction_is_traced_to_a_pixel() => Gen.Select(Gen.Double[-Math.PI, Math.PI], Gen.Double[120, 260], Gen.Double[28, 60]).Sample((angle, length, height) =>
    {
        var (x, y) = (Math.Cos(angle) * length / 2, Math.Sin(angle) * length / 2);
        var drawn = DrawnLine.Between(200 - x, 200 - y, 200 + x, 200 + y, height);
        var traced = Joiner.Join(CoreComponents.Of(DrawnLine.Maps(400, 400, 1, drawn), Options)).Single();
        return traced.Start.DistanceTo(drawn.Start).Pixels < 1.5
            && traced.End.DistanceTo(drawn.End).Pixels < 1.5
            && Math.Abs(traced.InkHeight - height) < 0.5;
    });

    [Fact]
    public void A_line_seen_at_half_scale_lies_where_it_lies_at_full_scale()
    {
        var drawn = DrawnLine.Between(60, 100, 340, 110, 80);
        var traced = Joiner.Join(CoreComponents.Of(DrawnLine.Maps(200, 200, 0.5, drawn), Options)).Single();

        Assert.True(traced.Start.DistanceTo(drawn.Start).Pixels < 1.5);
        Assert.True(traced.End.DistanceTo(drawn.End).Pixels < 1.5);
        Assert.Equal(80, traced.InkHeight, 1.0);
    }

    [Fact]
    public void The_bow_of_a_long_line_is_followed()
    {
        var drawn = DrawnLine.Between(20, 100, 380, 100, 40, bow: 8);
        var traced = Joiner.Join(CoreComponents.Of(DrawnLine.Maps(400, 200, 1, drawn), Options)).Single();

        Assert.Equal(8, traced.Bow, 1.0);
    }

    [Fact]
    public void Words_with_a_gap_between_are_one_line()
    {
        var maps = DrawnLine.Maps(400, 200, 1, DrawnLine.Between(20, 100, 150, 100), DrawnLine.Between(190, 101, 360, 101));

        Assert.Equal(340, Joiner.Join(CoreComponents.Of(maps, Options)).Single().Length, 5.0);
    }

    [Fact]
    public void Lines_below_each_other_stay_apart()
    {
        var maps = DrawnLine.Maps(400, 200, 1, DrawnLine.Between(20, 60, 350, 60), DrawnLine.Between(40, 110, 350, 110));

        Assert.Equal(2, Joiner.Join(CoreComponents.Of(maps, Options)).Count);
    }

    [Fact]
    public void Touching_lines_that_read_in_different_directions_stay_apart()
    {
        var maps = DrawnLine.Maps(400, 400, 1, DrawnLine.Between(20, 60, 240, 60), DrawnLine.Between(250, 50, 250, 350));

        Assert.Equal(2, Joiner.Join(CoreComponents.Of(maps, Options)).Count);
    }

    [Fact]
    public void A_line_found_at_two_scales_is_kept_once()
    {
        var drawn = DrawnLine.Between(20, 100, 380, 100);
        var kept = Joiner.KeepSurest([drawn with { Score = 0.8 }, drawn with { Score = 0.9 }], []);

        Assert.Equal(0.9, Assert.Single(kept).Score);
    }

    [Fact]
    public void Nothing_that_lies_over_a_line_already_read_is_kept()
    {
        var read = DrawnLine.Between(20, 100, 380, 100) with { Score = 0.7 };
        var below = DrawnLine.Between(20, 180, 380, 180);
        var kept = Joiner.KeepSurest([read with { Score = 0.9 }, below], [read]);

        Assert.Equal(below, Assert.Single(kept));
    }

    [Fact]
    public void Blank_maps_give_no_line() => Assert.Empty(Joiner.Join(CoreComponents.Of(DrawnLine.Maps(400, 400, 1), Options)));

    [Fact]
    public void Lines_come_in_the_readers_order_even_upside_down()
    {
        var first = DrawnLine.Between(380, 200, 20, 200);
        var second = DrawnLine.Between(300, 140, 100, 140);
        var third = DrawnLine.Between(300, 80, 100, 80);

        Assert.Equal([first, second, third], ReadingOrder.Of([third, first, second], trace => trace.Box));
    }

    [Fact]
    public void Cells_that_disagree_about_the_sense_of_reading_are_one_line()
    {
        var drawn = DrawnLine.Between(20, 100, 380, 100);
        var cells = CoreComponents.Of(DrawnLine.Maps(400, 200, 1, drawn), Options).Single();
        var traced = LineTracer.Trace([.. cells.Select((cell, index) => index % 3 == 0 ? cell.Turned() : cell)]);

        Assert.True(traced.Start.DistanceTo(drawn.Start).Pixels < 1.5);
        Assert.Equal(40, traced.InkHeight, 0.5);
    }

    [Fact]
    public void Where_cells_say_that_a_long_line_reads_across_itself_its_shape_decides()
    {
        var drawn = DrawnLine.Between(100, 20, 100, 380);
        var cells = CoreComponents.Of(DrawnLine.Maps(200, 400, 1, drawn), Options).Single();
        var traced = LineTracer.Trace([.. cells.Select(cell => cell with { Cosine = 1, Sine = 0 })]);

        Assert.Equal(90, Math.Abs(traced.Direction.Degrees), 1.0);
        Assert.Equal(360, traced.Length, 12.0);
        Assert.Equal(40, traced.InkHeight, 4.0);
    }
}
