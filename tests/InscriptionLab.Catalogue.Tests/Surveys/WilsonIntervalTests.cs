using InscriptionLab.Surveys;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Surveys;

public sealed class WilsonIntervalTests
{
    /// <summary>R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in Medicine 17 (1998) 857–872, table I, method 3 (score, no continuity correction).</summary>
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void The_published_intervals_come_out(int count, int of, double low, double high)
    {
        var interval = WilsonInterval.Of(count, of);

        Assert.Equal(low, interval.Low, 4);
        Assert.Equal(high, interval.High, 4);
    }

    [Fact]
    public void Nothing_counted_says_nothing() => Assert.Equal(new WilsonInterval(0, 1), WilsonInterval.Of(0, 0));

    [Fact]
    public void All_and_none_mirror_each_other()
    {
        var (all, none) = (WilsonInterval.Of(17, 17), WilsonInterval.Of(0, 17));

        Assert.Equal(1, all.High);
        Assert.Equal(1 - all.Low, none.High, 12);
    }
}
