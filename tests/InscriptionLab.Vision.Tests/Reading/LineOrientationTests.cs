using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Lines;
using InscriptionLab.Vision.Reading;
using InscriptionLab.Vision.Tests.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class LineOrientationTests
{
    private static readonly LineTrace Rightward = DrawnLine.Between(0, 0, 100, 0);

    [Fact]
    public void One_unsure_line_does_not_make_a_photo_mirrored() =>
        Assert.False(LineOrientation.IsMirrored([Sight(0.45, 0, 0.55, 0), Sight(0.9, 0, 0.1, 0)]));

    [Fact]
    public void Lines_together_show_that_a_photo_is_mirrored() =>
        Assert.True(LineOrientation.IsMirrored([Sight(0.55, 0, 0.45, 0), Sight(0.1, 0, 0, 0.9)]));

    [Fact]
    public void A_line_that_reads_the_same_both_ways_follows_the_others()
    {
        LineTrace[] traces = [Rightward, Rightward with { InkHeight = 30 }];

        Assert.Equal([true, true], LineOrientation.AreTurned(traces, [Sight(0.5, 0.5, 0, 0), Sight(0.02, 0.98, 0, 0)], false, 20));
    }

    [Fact]
    public void A_line_traced_the_other_way_follows_the_others_in_the_strip()
    {
        LineTrace[] traces = [Rightward.Turned(), Rightward];

        Assert.Equal([false, true], LineOrientation.AreTurned(traces, [Sight(0.5, 0.5, 0, 0), Sight(0.02, 0.98, 0, 0)], false, 20));
    }

    [Fact]
    public void A_line_that_is_sure_stands_for_itself()
    {
        LineTrace[] traces = [Rightward, Rightward];

        Assert.Equal([false, true], LineOrientation.AreTurned(traces, [Sight(0.99, 0.01, 0, 0), Sight(0.01, 0.99, 0, 0)], false, 20));
    }

    private static LineSight Sight(params double[] orientation) =>
        new(new LinePosteriors(["", "a"], 0, [0, 0]), [.. orientation], [1], 1, [.. Enumerable.Repeat((0f, 0f), 1)]);
}
