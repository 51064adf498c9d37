using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

/// <summary>A sure word on one letter of small lettering is not believed as far as the same word on larger lettering; two letters in the other order still decide.</summary>
public sealed class SmallLetteringTests
{
    [Theory]
    [InlineData(14, FindingOutcome.Undecided, -1.85)]
    [InlineData(17.9, FindingOutcome.Undecided, -1.85)]
    [InlineData(18, FindingOutcome.Differs, -2.004)]
    [InlineData(40, FindingOutcome.Differs, -2.004)]
    public void One_letter_of_small_lettering_does_not_decide(double height, FindingOutcome outcome, double log10)
    {
        // As read on a rendered photo with an x of 14 to 20 pixels, where the letter was a v: 0.0094 / 0.9496 is 1 in 101.
        var line = Fabricated.Line("Sedgraye").With(6, 0.9496, ("v", 0.0094));
        var comparison = new Comparer(Fabricated.List("Sedgrave")).Compare(Fabricated.Of(Boxed(line, height)));

        Assert.Equal(log10, comparison.Nearest[0].SpellingDifferences.Single().Log10Ratio, 3);
        Assert.Equal(outcome, new Judge().Decide(comparison).Outcome);
    }

    [Fact]
    public void Two_letters_in_the_other_order_decide_however_small()
    {
        var comparison = new Comparer(Fabricated.List("FENNIMARCH")).Compare(Fabricated.Of(Boxed(Fabricated.Line("FENNIMRACH"), 14)));

        Assert.Equal(FindingOutcome.Differs, new Judge().Decide(comparison).Outcome);
        Assert.All(comparison.Nearest[0].SpellingDifferences, difference => Assert.Equal(-3.7, difference.Log10Ratio, 3));
    }

    /// <summary>The height is that of the small letters without parts above or below, where there are two.</summary>
    [Fact]
    public void Tall_letters_do_not_make_lettering_large()
    {
        var line = Boxed(Fabricated.Line("Sedgraye").With(6, 0.9496, ("v", 0.0094)), 14);
        var tall = line with { Letters = [.. line.Letters.Select(letter => letter.Character is "S" or "d" or "g" or "y" ? letter with { InPhoto = Box(28) } : letter)] };

        Assert.Equal(FindingOutcome.Undecided, new Judge().Decide(new Comparer(Fabricated.List("Sedgrave")).Compare(Fabricated.Of(tall))).Outcome);
    }

    private static LineReading Boxed(LineReading line, double height) => line with { Letters = [.. line.Letters.Select(letter => letter with { InPhoto = Box(height) })] };

    private static Quad Box(double height) => new(new PixelPoint(0, 0), new PixelPoint(10, 0), new PixelPoint(10, height), new PixelPoint(0, height));
}
