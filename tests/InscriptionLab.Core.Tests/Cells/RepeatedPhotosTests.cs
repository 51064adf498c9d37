using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

public sealed class RepeatedPhotosTests
{
    /// <summary>The voltage readings of the GUM, example H.2 (table H.2): mean 4.9990, standard uncertainty of the mean 0.0032, four degrees of freedom.</summary>
    [Fact]
    public void The_scatter_of_the_GUM_H_2_comes_out_as_a_Type_A_row()
    {
        double[] readings = [5.007, 4.994, 5.005, 4.990, 4.999];
        var together = Assert.Single(RepeatedPhotos.Combine([.. readings.Select(value => Photo(value, 0.001, 0))]));
        Assert.Equal(4.9990, together.Diameter.Value.Millimetres, 5);
        Assert.Equal(0.0032, together.Budget.CombinedStandardUncertainty, 4);
        Assert.Equal(4, together.Budget.EffectiveDegreesOfFreedom, 6);

        // Student's factor for 95.45 % and four degrees of freedom (GUM, table G.2): 2.87.
        Assert.Equal(2.87, together.Diameter.CoverageFactor, 2);
        Assert.Equal(readings, together.Readings.Select(reading => reading.Millimetres));
    }

    [Fact]
    public void What_is_the_same_in_every_photo_is_not_made_smaller()
    {
        var few = Assert.Single(RepeatedPhotos.Combine([.. Enumerable.Range(0, 2).Select(i => Photo(40 + (0.001 * i), 0.02, 0.05))]));
        var many = Assert.Single(RepeatedPhotos.Combine([.. Enumerable.Range(0, 100).Select(i => Photo(40 + (0.001 * (i % 2)), 0.02, 0.05))]));
        Assert.True(many.Budget.CombinedStandardUncertainty >= 0.05);
        Assert.True(many.Budget.CombinedStandardUncertainty < few.Budget.CombinedStandardUncertainty);
    }

    [Fact]
    public void Two_photos_that_agree_by_chance_promise_no_more_than_their_readings()
    {
        var together = Assert.Single(RepeatedPhotos.Combine([Photo(40, 0.02, 0), Photo(40, 0.02, 0)]));
        Assert.Equal(0.02 / Math.Sqrt(2), together.Budget.CombinedStandardUncertainty, 9);
        Assert.Null(together.Disagreement);
    }

    [Fact]
    public void Photos_that_differ_more_than_their_readings_explain_are_told() =>
        Assert.Contains("same cell", Assert.Single(RepeatedPhotos.Combine([Photo(40, 0.01, 0), Photo(40.2, 0.01, 0), Photo(40, 0.01, 0)])).Disagreement, StringComparison.Ordinal);

    /// <summary>One chance in a hundred: chi squared beyond 6.635 for two photos and 9.210 for three (tables of the distribution). A difference d between two photos with readings of 0.01 each makes d² / (2 x 0.01²), and so it does with a third one half way.</summary>
    [Theory]
    [InlineData(false, 0, 13.0)]
    [InlineData(true, 0, 13.6)]
    [InlineData(false, 1, 18.0)]
    [InlineData(true, 1, 18.8)]
    public void Photos_disagree_where_chance_makes_such_a_difference_once_in_a_hundred(bool told, int between, double square)
    {
        var difference = 0.01 * Math.Sqrt(square);
        var together = Assert.Single(RepeatedPhotos.Combine([Photo(40, 0.01, 0), .. Enumerable.Repeat(Photo(40 + (difference / 2), 0.01, 0), between), Photo(40 + difference, 0.01, 0)]));

        Assert.Equal(told, together.Disagreement is not null);
    }

    [Fact]
    public void What_is_the_same_in_every_photo_is_known_no_better_than_where_it_is_known_worst() =>
        Assert.Equal(4, Assert.Single(RepeatedPhotos.Combine([Photo(40, 0.01, 0.02, 9), Photo(40, 0.01, 0.02, 4)])).Budget.Rows.Single(row => row.Source == "scale").DegreesOfFreedom);

    /// <summary>A thousand sets of photos whose common error and readings are drawn from the stated distributions: about 95 of 100 intervals must hold the truth (within five standard deviations of a count of a thousand).</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(6)]
    public void Intervals_hold_the_truth_as_often_as_they_say(int photos)
    {
        var random = new Random(42);
        double Normal(double sigma) => sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
        const int Sets = 1000;
        var held = 0;
        for (var set = 0; set < Sets; set++)
        {
            var common = Normal(0.02);
            var together = RepeatedPhotos.Combine([.. Enumerable.Range(0, photos).Select(_ => Photo(40 + common + Normal(0.03), 0.03, 0.02))])[0];
            held += Math.Abs(together.Diameter.Value.Millimetres - 40) <= together.Diameter.ExpandedUncertainty.Millimetres ? 1 : 0;
        }

        Assert.InRange(held, 920, 1000);
    }

    private static CellMeasurement Photo(double diameter, double reading, double common, double degrees = double.PositiveInfinity)
    {
        var budget = new UncertaintyBudget(
        [
            new BudgetRow("readings", reading, "mm", 1, 50, "drawn") { VariesByPhoto = true },
            .. common > 0 ? [new BudgetRow("scale", common, "mm", 1, degrees, "drawn")] : ImmutableArray<BudgetRow>.Empty,
        ]);
        var length = Length.FromMillimetres(diameter);
        var none = new Measured(Length.FromMillimetres(0), Length.FromMillimetres(0), 2);
        var circle = new CellCircle(CircleRole.Outer, new Measured(length, Length.FromMillimetres(budget.ExpandedUncertainty), 2), default, budget, 1);
        return new CellMeasurement(new ScaleFound(ScaleKind.Rule, length, false, new ImageScale(10, 0.001), []), [circle], none, Angle.FromRadians(0), none, []);
    }
}
