using System;
using CsCheck;
using Xunit;

namespace InscriptionLab.Core.Tests.Findings;

public sealed class LikelihoodRatioCostTests
{
    /// <summary>
    /// By hand from the same eight ratios: 0.01 and 0.1 are of the second alone, 10 and 100 of the first alone, 0.5 and 2 of one each, so that recalibrated they
    /// are 0, 0, 1, 1, infinite: half of (two of four first cases at log2 2, two at 0) and the same for the second, which is 0.5 in all.
    /// </summary>
    [Fact]
    public void What_a_recalibration_would_leave_is_worked_by_hand()
    {
        Assert.Equal(0.5, LikelihoodRatioCost.Least([100, 10, 2, 0.5], [0.01, 0.1, 0.5, 2]), 12);
        Assert.Equal(1, LikelihoodRatioCost.Least([1, 1], [1, 1]), 12);
        Assert.Equal(0, LikelihoodRatioCost.Least([1.1, 1.2], [0.9, 1.0]), 12);
        Assert.Equal(LikelihoodRatioCost.Least([4, 2, 1], [1, 0.5]), LikelihoodRatioCost.Least([16, 4, 1], [1, 0.25]), 12);
    }

    /// <summary>
    /// By the definition of Brümmer and du Preez (2006): (log2 1.01 + log2 1.1 + log2 1.5 + log2 3)/4 = 0.580446 and the same four for the
    /// other proposition, so that half the sum of the means is 0.580446.
    /// </summary>
    [Fact]
    public void The_cost_of_ratios_is_the_published_definition() =>
        Assert.Equal(0.580446, LikelihoodRatioCost.Of([100, 10, 2, 0.5], [0.01, 0.1, 0.5, 2]), 6);

    [Fact]
    public void Ratios_of_one_cost_exactly_one() => Assert.Equal(1, LikelihoodRatioCost.Of([1, 1, 1], [1, 1]));

    [Fact]
    public void Better_ratios_never_cost_more() =>
        Gen.Select(Gen.Double[0.01, 100].Array[1, 5], Gen.Double[0.01, 100].Array[1, 5], Gen.Double[1, 10]).Sample((first, second, factor) =>
            LikelihoodRatioCost.Of(Array.ConvertAll(first, ratio => ratio * factor), Array.ConvertAll(second, ratio => ratio / factor))
                <= LikelihoodRatioCost.Of(first, second) + 1e-12);

    [Fact]
    public void Without_cases_of_both_kinds_there_is_no_cost() => Assert.Throws<ArgumentException>(() => LikelihoodRatioCost.Of([], [1]));
}
