using System;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

public sealed class UncertaintyBudgetTests
{
    /// <summary>JCGM 100:2008, example H.1 (end gauge), table H.1: u_c(l) = 32 nm, effective degrees of freedom 16, t_99(16) = 2.92, U_99 = 93 nm.</summary>
    [Fact]
    public void The_end_gauge_of_the_GUM_H_1_has_32_nm_16_degrees_and_93_nm()
    {
        const double Length = 50.000623e6;
        const double Alpha = 11.5e-6;
        var difference = new UncertaintyBudget([
            new("repeatability", 5.8, "nm", 1, 24, "25 readings"),
            new("comparator, random", 3.9, "nm", 1, 5, "certificate"),
            new("comparator, systematic", 6.7, "nm", 1, 8, "certificate"),
        ]);
        Assert.Equal(9.7, difference.CombinedStandardUncertainty, 1);
        Assert.Equal(25.6, difference.EffectiveDegreesOfFreedom, 0.3);

        var budget = new UncertaintyBudget([
            new("standard", 25, "nm", 1, 18, "certificate"),
            new("difference", difference.CombinedStandardUncertainty, "nm", 1, difference.EffectiveDegreesOfFreedom, "readings"),
            new("expansion difference", 1e-6 / Math.Sqrt(3), "1/°C", -Length * -0.1, 50, "bounds"),
            new("temperature difference", 0.05 / Math.Sqrt(3), "°C", -Length * Alpha, 2, "bounds"),
        ]);
        Assert.Equal(32, budget.CombinedStandardUncertainty, 0.5);
        Assert.Equal(16, Math.Floor(budget.EffectiveDegreesOfFreedom));
        Assert.Equal(2.92, budget.CoverageFactorFor(0.99), 2);
        Assert.Equal(93, budget.CombinedStandardUncertainty * budget.CoverageFactorFor(0.99), 1.0);
    }

    [Fact]
    public void A_budget_of_known_uncertainties_has_the_normal_factor()
    {
        var budget = new UncertaintyBudget([new("only", 1, "mm", 1, double.PositiveInfinity, "known")]);
        Assert.Equal(1.95996, budget.CoverageFactorFor(0.95), 4);
        Assert.Equal(2, budget.ExpandedUncertainty);
    }

    [Fact]
    public void A_row_without_degrees_of_freedom_is_refused() =>
        Assert.Throws<ArgumentException>(() => new UncertaintyBudget([new("bad", 1, "mm", 1, 0, "none")]));

    /// <summary>JCGM 100:2008, clause 7.2.6: at most two digits of uncertainty, the value to the same place.</summary>
    [Theory]
    [InlineData(39.8612, 0.0684, "D = (39.861 ± 0.068) mm")]
    [InlineData(39.8612, 0.684, "D = (39.86 ± 0.68) mm")]
    [InlineData(139.8612, 12.4, "D = (140 ± 12) mm")]
    public void A_statement_has_two_digits_of_uncertainty(double value, double uncertainty, string start)
    {
        var measured = new Measured(Length.FromMillimetres(value), Length.FromMillimetres(uncertainty), 2);
        var statement = GumStatement.Of(measured, 16.7);
        Assert.StartsWith(start, statement, StringComparison.Ordinal);
        Assert.Contains("k = 2 ", statement, StringComparison.Ordinal);
        Assert.Contains("16 effective degrees", statement, StringComparison.Ordinal);
    }
}
