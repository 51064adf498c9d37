using System;
using InscriptionLab.Cells;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

public sealed class PropagationTests
{
    /// <summary>JCGM 100:2008, example H.2, table H.2 (readings) and table H.3 (results): R = 127.732(71), X = 219.847(295), Z = 254.260(236) ohms; r(R,X) = -0.588, r(R,Z) = -0.485, r(X,Z) = 0.993.</summary>
    [Fact]
    public void Resistance_and_reactance_of_the_GUM_H_2_come_out_with_their_correlations()
    {
        double[][] readings =
        [
            [5.007, 19.663e-3, 1.0456],
            [4.994, 19.639e-3, 1.0438],
            [5.005, 19.640e-3, 1.0468],
            [4.990, 19.685e-3, 1.0428],
            [4.999, 19.678e-3, 1.0433],
        ];
        var result = CorrelatedPropagation.OfReadings(readings, x => [x[0] / x[1] * Math.Cos(x[2]), x[0] / x[1] * Math.Sin(x[2]), x[0] / x[1]]);
        Assert.Equal(127.732, result.Values[0], 3);
        Assert.Equal(219.847, result.Values[1], 3);
        Assert.Equal(254.260, result.Values[2], 3);
        Assert.Equal(0.071, result.StandardUncertainty(0), 0.0006);
        Assert.Equal(0.295, result.StandardUncertainty(1), 0.0012);
        Assert.Equal(0.236, result.StandardUncertainty(2), 0.0006);
        Assert.Equal(-0.588, result.Correlation(0, 1), 3);
        Assert.Equal(-0.485, result.Correlation(0, 2), 3);
        Assert.Equal(0.993, result.Correlation(1, 2), 3);
    }

    /// <summary>One row of known uncertainty is the normal distribution: 1.95996 for 95 of 100; with 4 degrees of freedom Student's 2.7764 (tables of the t-distribution).</summary>
    [Theory]
    [InlineData(double.PositiveInfinity, 1.95996)]
    [InlineData(4, 2.7764)]
    public void Draws_of_one_input_give_the_tables_factor(double degrees, double factor)
    {
        var budget = new UncertaintyBudget([new("only", 1, "mm", 1, degrees, "test")]);
        Assert.Equal(factor, BudgetSimulation.HalfWidth(budget, 0.95, 200_000, 3), 0.02 * factor);
    }

    /// <summary>JCGM 101:2008: for several inputs of like size with many degrees of freedom the law of propagation and random draws agree.</summary>
    [Fact]
    public void Draws_agree_with_the_law_of_propagation_where_it_holds()
    {
        var budget = new UncertaintyBudget([
            new("a", 0.03, "mm", 1, 100, "test"),
            new("b", 0.02, "mm", 1.5, 100, "test"),
            new("c", 0.5, "px", 0.05, 100, "test"),
        ]);
        var propagated = budget.CoverageFactorFor(0.95) * budget.CombinedStandardUncertainty;
        Assert.Equal(propagated, BudgetSimulation.HalfWidth(budget, 0.95, 200_000, 4), 0.04 * propagated);
    }
}
