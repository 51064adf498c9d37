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
    public void A_crop_that_shows_each_look_turned_is_turned()
    {
        // As traced it looks turned, turned it looks upright, mirrored it looks mirrored and turned, and so on.
        var weights = LineOrientation.Weigh([Sight(0, 1, 0, 0), Sight(1, 0, 0, 0), Sight(0, 0, 0, 1), Sight(0, 0, 1, 0)]);

        Assert.Equal(LineOrientation.Turned, Best(weights));
    }

    [Fact]
    public void A_mirrored_line_is_known_from_all_its_looks()
    {
        var weights = LineOrientation.Weigh([Sight(0.4, 0, 0.6, 0), Sight(0, 0.1, 0, 0.9), Sight(1, 0, 0, 0), Sight(0, 1, 0, 0)]);

        Assert.Equal(LineOrientation.Mirrored, Best(weights));
    }

    [Fact]
    public void A_clear_reading_outweighs_an_orientation_that_is_unsure()
    {
        var weights = LineOrientation.Weigh([Sight(0.5, 0.5, 0, 0), ClearSight(0.5, 0.5, 0, 0), Sight(0, 0, 0.5, 0.5), Sight(0, 0, 0.5, 0.5)]);

        Assert.Equal(LineOrientation.Turned, Best(weights));
    }

    [Fact]
    public void Letters_that_read_clearly_outweigh_a_network_that_takes_both_ways_for_upright()
    {
        // As an unknown face does: nearly as sure of the line on its head as of the line upright, but only one of the two can be read.
        var weights = LineOrientation.Weigh([Word("abababab", 0.95, 0.69, 0.29, 0.02, 0), Word("abababa", 0.75, 0.998, 0.001, 0, 0), Word("a", 0.8, 0, 0, 0.01, 0.99), Word("a", 0.8, 0, 0.03, 0.94, 0.03)]);

        Assert.Equal(0, Best(weights));
    }

    [Fact]
    public void One_sure_look_counts_as_much_as_four()
    {
        var weights = LineOrientation.Weigh([ClearSight(0, 1, 0, 0), null, null, null]);

        Assert.Equal(LineOrientation.Turned, Best(weights));
        Assert.False(LineOrientation.IsMirrored([weights, [0, -9, 6, -9]]));
    }

    [Fact]
    public void One_unsure_line_does_not_make_a_photo_mirrored() => Assert.False(LineOrientation.IsMirrored([[0, -9, 1, -9], [3, -9, 0, -9]]));

    [Fact]
    public void Lines_together_show_that_a_photo_is_mirrored() => Assert.True(LineOrientation.IsMirrored([[1, -9, 0, -9], [0, -9, -9, 7]]));

    [Fact]
    public void A_line_that_reads_the_same_both_ways_follows_the_others()
    {
        LineTrace[] traces = [Rightward, Rightward with { InkHeight = 30 }];

        Assert.Equal([true, true], LineOrientation.AreTurned(traces, [[0, 0, -9, -9], [0, 5, -9, -9]], false, 20));
    }

    [Fact]
    public void A_line_traced_the_other_way_follows_the_others_in_the_strip()
    {
        LineTrace[] traces = [Rightward.Turned(), Rightward];

        Assert.Equal([false, true], LineOrientation.AreTurned(traces, [[0, 0, -9, -9], [0, 5, -9, -9]], false, 20));
    }

    [Fact]
    public void A_line_that_is_sure_stands_for_itself()
    {
        LineTrace[] traces = [Rightward, Rightward];

        Assert.Equal([false, true], LineOrientation.AreTurned(traces, [[5, 0, -9, -9], [0, 5, -9, -9]], false, 20));
    }

    private static int Best(double[] weights) => System.Array.IndexOf(weights, weights.Max());

    private static LineSight Sight(params double[] orientation) => Sight(0.5, orientation);

    private static LineSight ClearSight(params double[] orientation) => Sight(0.99, orientation);

    private static LineSight Sight(double peak, double[] orientation) => Word("a", peak, orientation);

    /// <summary>What is seen of a word, each letter in a frame of its own with the same peak.</summary>
    private static LineSight Word(string letters, double peak, params double[] orientation)
    {
        float Log(double probability) => (float)System.Math.Log(probability);
        var frames = letters.SelectMany(letter => new[] { Log((1 - peak) / 2), Log(letter == 'a' ? peak : (1 - peak) / 2), Log(letter == 'b' ? peak : (1 - peak) / 2) });
        return new(new LinePosteriors(["", "a", "b"], 0, [.. frames]), [.. orientation], [1], 1, [.. letters.Select(_ => (0f, 0f))]);
    }
}
