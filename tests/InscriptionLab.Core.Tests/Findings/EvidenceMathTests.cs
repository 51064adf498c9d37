using System;
using CsCheck;
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
        Assert.Equal(probability, EvidenceMath.ProbabilityOf(EvidenceMath.PosteriorOdds(ratio, odds)), 6);

    /// <summary>
    /// By the definition of Brümmer and du Preez (2006): (log2 1.01 + log2 1.1 + log2 1.5 + log2 3)/4 = 0.580446 and the same four for the
    /// other proposition, so that half the sum of the means is 0.580446.
    /// </summary>
    /// <summary>
    /// By hand from the same eight ratios: 0.01 and 0.1 are of the second alone, 10 and 100 of the first alone, 0.5 and 2 of one each, so that recalibrated they
    /// are 0, 0, 1, 1, infinite: half of (two of four first cases at log2 2, two at 0) and the same for the second, which is 0.5 in all.
    /// </summary>
    [Fact]
    public void What_a_recalibration_would_leave_is_worked_by_hand()
    {
        Assert.Equal(0.5, CalibrationCost.Least([100, 10, 2, 0.5], [0.01, 0.1, 0.5, 2]), 12);
        Assert.Equal(0.580446, EvidenceMath.LogLikelihoodRatioCost([100, 10, 2, 0.5], [0.01, 0.1, 0.5, 2]), 6);
        Assert.Equal(1, CalibrationCost.Least([1, 1], [1, 1]), 12);
        Assert.Equal(0, CalibrationCost.Least([1.1, 1.2], [0.9, 1.0]), 12);
        Assert.Equal(CalibrationCost.Least([4, 2, 1], [1, 0.5]), CalibrationCost.Least([16, 4, 1], [1, 0.25]), 12);
    }

    [Fact]
    public void The_cost_of_ratios_is_the_published_definition() =>
        Assert.Equal(0.580446, EvidenceMath.LogLikelihoodRatioCost([100, 10, 2, 0.5], [0.01, 0.1, 0.5, 2]), 6);

    [Fact]
    public void Ratios_of_one_cost_exactly_one() => Assert.Equal(1, EvidenceMath.LogLikelihoodRatioCost([1, 1, 1], [1, 1]));

    [Fact]
    public void Better_ratios_never_cost_more() =>
        Gen.Select(Gen.Double[0.01, 100].Array[1, 5], Gen.Double[0.01, 100].Array[1, 5], Gen.Double[1, 10]).Sample((first, second, factor) =>
            EvidenceMath.LogLikelihoodRatioCost(Array.ConvertAll(first, ratio => ratio * factor), Array.ConvertAll(second, ratio => ratio / factor))
                <= EvidenceMath.LogLikelihoodRatioCost(first, second) + 1e-12);

    [Fact]
    public void Impossible_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EvidenceMath.PosteriorOdds(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EvidenceMath.PosteriorOdds(1, double.NaN));
        Assert.Throws<ArgumentException>(() => EvidenceMath.LogLikelihoodRatioCost([], [1]));
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
}
