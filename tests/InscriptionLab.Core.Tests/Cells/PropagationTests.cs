using InscriptionLab.Cells;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

public sealed class PropagationTests
{
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
