using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Optics;
using Xunit;

namespace InscriptionLab.Core.Tests.Optics;

public sealed class WrittenSizeTests
{
    /// <summary>Rows of published catalogues: 1.4 in beside 40 mm is a slip (35.6 mm); 0.7 beside 19 and 0.9 beside 24 may still be two roundings of one size.</summary>
    [Theory]
    [InlineData("1.4", 40, true)]
    [InlineData("0.7", 19, false)]
    [InlineData("0.9", 24, false)]
    [InlineData("1.6", 41, false)]
    [InlineData("2", 51, false)]
    [InlineData("1.625", 40.6, true)]
    public void Inches_and_millimetres_that_contradict_each_other_are_told(string inches, double millimetres, bool told)
    {
        var value = double.Parse(inches, System.Globalization.CultureInfo.InvariantCulture);
        var sentence = InchAndMillimetre.Contradiction(value, InchAndMillimetre.StepOf(inches), millimetres, 1);
        Assert.Equal(told, sentence is not null);
    }

    [Theory]
    [InlineData("40", 1)]
    [InlineData("1.4", 0.1)]
    [InlineData("1 5/16", 0.0625)]
    public void The_rounding_of_a_written_number_is_its_last_digit(string written, double step) =>
        Assert.Equal(step, InchAndMillimetre.StepOf(written), 12);

    /// <summary>18 Paris lignes are 40.60 mm and 1 5/8 in 41.28 mm (French law of 1799; 1959 inch).</summary>
    [Fact]
    public void Round_sizes_of_old_workshops_are_hints_and_say_whether_they_lie_within()
    {
        var near = WorkshopSize.Near(new Measured(Length.FromMillimetres(40.63), Length.FromMillimetres(0.1), 2));
        Assert.Equal(["1 5/8 in", "18 Paris lignes", "40.5 mm"], near.Select(n => n.Words));
        Assert.Equal([false, true, false], near.Select(n => n.Within));
        Assert.Equal(40.605, near[1].Size.Millimetres, 3);
        Assert.Equal(41.275, near[0].Size.Millimetres, 3);
    }
}
