using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

public sealed class LineTraceTests
{
    private static readonly Gen<LineTrace> Traces = Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500], Gen.Double[-Math.PI, Math.PI], Gen.Double[20, 400], Gen.Double[-10, 10])
        .Select((x, y, angle, length, bow) => new LineTrace(
            new PixelPoint(x, y),
            new PixelPoint(x + (length * Math.Cos(angle)), y + (length * Math.Sin(angle))),
            bow,
            20,
            1));

    [Fact]
    public void A_turned_line_is_the_same_ink_read_from_the_other_end() => Gen.Select(Traces, Gen.Double[0, 1], Gen.Double[-10, 10]).Sample((trace, share, down) =>
        trace.At(share * trace.Length, down).DistanceTo(trace.Turned().At((1 - share) * trace.Length, -down)).Pixels < 1e-6);

    [Fact]
    public void A_point_of_a_straight_line_is_found_where_it_was_put() => Gen.Select(Traces, Gen.Double[-50, 500], Gen.Double[-50, 50]).Sample((trace, along, down) =>
    {
        var (foundAlong, foundDown) = (trace with { Bow = 0 }).Locate((trace with { Bow = 0 }).At(along, down));
        return Math.Abs(foundAlong - along) < 1e-6 && Math.Abs(foundDown - down) < 1e-6;
    });

    [Fact]
    public void The_readers_down_is_the_pictures_down_for_a_line_from_left_to_right()
    {
        var trace = new LineTrace(new(10, 50), new(110, 50), 0, 20, 1);

        Assert.Equal(new PixelPoint(60, 57), trace.At(50, 7));
    }

    [Fact]
    public void A_bow_bulges_at_half_length_and_not_at_the_ends()
    {
        var trace = new LineTrace(new(0, 0), new(100, 0), 4, 20, 1);

        Assert.Equal(0, trace.At(0, 0).Y, 9);
        Assert.Equal(4, trace.At(50, 0).Y, 9);
        Assert.Equal(0, trace.At(100, 0).Y, 9);
    }
}
