using InscriptionLab.Measures;
using InscriptionLab.Page.Measuring;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class MeasuringTests
{
    [Fact]
    public void A_circle_placed_by_hand_is_its_longer_axis_over_the_scale()
    {
        var (diameter, budget) = HandCircle.Of(400, new ImageScale(20, 0.001));

        // JCGM 100: u = sqrt((sqrt(2/3) px / 20 px/mm)^2 + (0.001 * 40 mm)^2) = sqrt(0.040825^2 + 0.04^2) = 0.057155 mm, computed by hand.
        Assert.Equal(40, diameter.Value.Millimetres, 9);
        Assert.Equal(0.057155, budget.CombinedStandardUncertainty, 1e-6);
        Assert.Equal(2 * budget.CombinedStandardUncertainty, diameter.ExpandedUncertainty.Millimetres, 12);
    }

    [Fact]
    public void A_scale_laid_by_hand_brings_its_own_doubt()
    {
        var (diameter, budget) = HandCircle.Of(400, 200, 10);
        var (_, longer) = HandCircle.Of(400, 2000, 100);

        Assert.Equal(40, diameter.Value.Millimetres, 9);
        Assert.True(longer.CombinedStandardUncertainty < budget.CombinedStandardUncertainty);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(17.3)]
    [InlineData(400)]
    public void Twice_the_pixels_on_twice_the_scale_is_the_same_size(double half) =>
        Assert.Equal(HandCircle.Of(half, new ImageScale(7, 0.01)).Diameter.Value.Millimetres, HandCircle.Of(2 * half, new ImageScale(14, 0.01)).Diameter.Value.Millimetres, 9);
}
