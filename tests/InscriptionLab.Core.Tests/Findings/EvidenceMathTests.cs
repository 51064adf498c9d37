using System;
using InscriptionLab.Findings;
using Xunit;

namespace InscriptionLab.Core.Tests.Findings;

public sealed class EvidenceMathTests
{
    /// <summary>Bayes' theorem in odds form, worked by hand: LR 100 on odds 1:99 is 100/99, a probability of 100/199.</summary>
    [Theory]
    [InlineData(100, 1.0 / 99, 0.502513)]
    [InlineData(100, 1, 0.990099)]
    [InlineData(1000, 1.0 / 99, 0.909918)]
    [InlineData(10, 1.0 / 9, 0.526316)]
    [InlineData(1, 3, 0.75)]
    [InlineData(0, 3, 0)]
    public void Ratio_times_odds_before_gives_odds_after(double ratio, double odds, double probability) =>
        Assert.Equal(probability, Probability(EvidenceMath.PosteriorOdds(ratio, odds)), 6);

    [Fact]
    public void Impossible_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EvidenceMath.PosteriorOdds(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EvidenceMath.PosteriorOdds(1, double.NaN));
    }

    [Theory]
    [InlineData(1, "no support either way")]
    [InlineData(1.9, "no support either way")]
    [InlineData(2, "weak support")]
    [InlineData(10, "moderate support")]
    [InlineData(99, "moderate support")]
    [InlineData(100, "moderately strong support")]
    [InlineData(1000, "strong support")]
    [InlineData(10_000, "very strong support")]
    public void Bands_are_those_of_the_scale(double ratio, string words)
    {
        Assert.Equal(words, VerbalScale.For(Math.Log10(ratio)));
        Assert.Equal(words, VerbalScale.For(-Math.Log10(ratio)));
    }

    private static double Probability(double odds) => odds / (1 + odds);
}
