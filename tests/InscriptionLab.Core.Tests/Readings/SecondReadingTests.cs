using System.Collections.Immutable;
using System.Linq;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class SecondReadingTests
{
    [Theory]
    [InlineData("Harvick", "Harvick", "+++++++")]
    [InlineData("Harvick", "Harwick", "+++-+++")]
    [InlineData("Harvick", "Havick", "++-++++")]
    [InlineData("Harvick", "xHarvick", "+++++++")]
    [InlineData("Harvick", "", "-------")]
    [InlineData("", "Harvick", "")]
    public void Letters_are_set_beside_each_other_with_the_fewest_changes(string first, string second, string agrees) =>
        Assert.Equal(agrees, Signs(first, second));

    [Fact]
    public void A_reading_agrees_with_itself_everywhere() => Gen.String[Gen.Char.AlphaNumeric, 0, 15].Sample(text => !Signs(text, text).Contains('-', System.StringComparison.Ordinal));

    [Fact]
    public void There_is_one_answer_for_each_letter() => Gen.Select(Gen.String[Gen.Char.AlphaNumeric, 0, 15], Gen.String[Gen.Char.AlphaNumeric, 0, 15])
        .Sample((first, second) => Signs(first, second).Length == first.Length);

    private static string Signs(string first, string second)
    {
        ImmutableArray<Letter> letters = [.. first.Select(character => new Letter(character.ToString(), Probability.One, [], default, default))];
        return string.Concat(SecondReading.Beside(letters, "second", second).Agrees.Select(same => same ? '+' : '-'));
    }
}
