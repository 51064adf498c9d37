using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

/// <summary>Signs after the Leiden conventions as tabled at en.wikipedia.org/wiki/Leiden_Conventions and in the EpiDoc guidelines.</summary>
public sealed class LeidenTranscriberTests
{
    private static readonly LeidenTranscriber Transcriber = new(new LeidenOptions());

    [Fact]
    public void Letters_seen_clearly_stand_bare() => Assert.Equal("Harvick", Transcriber.Text(Letters("Harvick", 0.99)));

    [Fact]
    public void Unclear_letters_carry_a_dot_below() => Assert.Equal("a\u0323b\u0323", Transcriber.Text(Letters("ab", 0.5)));

    [Fact]
    public void A_dotted_letter_is_still_one_letter() => Assert.Equal(3, StringInfo.ParseCombiningCharacters(Transcriber.Text(Letters("CAo", 0.5))).Length);

    [Fact]
    public void Traces_of_three_letters_are_three_dots() => Assert.Equal("Lo...n", Transcriber.Text([.. Letters("Lo", 1), .. Letters("???", 0.2), .. Letters("n", 1)]));

    [Fact]
    public void After_Krummrey_and_Panciera_traces_are_pluses() =>
        Assert.Equal("Lo+", new LeidenTranscriber(new LeidenOptions { Sigla = LeidenSigla.Pluses }).Text([.. Letters("Lo", 1), .. Letters("?", 0.2)]));

    [Fact]
    public void A_space_is_never_dotted() => Assert.Equal("a b", Transcriber.Text([.. Letters("a", 1), .. Letters(" ", 0.3), .. Letters("b", 1)]));

    [Fact]
    public void Long_s_and_raised_letters_are_kept_as_cut() => Assert.Equal("ſᵒ№", Transcriber.Text(Letters("ſᵒ№", 1)));

    [Fact]
    public void Alternatives_never_stand_in_the_text()
    {
        var vowel = Letters("e", 0.6)[0] with { Alternatives = [new("o", Probability.From(0.35)), new("c", Probability.From(0.01))] };

        Assert.Equal("We\u0323", Transcriber.Text([.. Letters("W", 1), vowel]));
    }

    [Fact]
    public void Whatever_the_doubt_no_letter_is_added_dropped_or_changed() => Gen.Select(Gen.String[Gen.Char.AlphaNumeric, 0, 12], Gen.Double[0, 1]).Sample((text, probability) =>
        Transcriber.Text(Letters(text, probability)).Replace(LeidenTranscriber.DotBelow, string.Empty, System.StringComparison.Ordinal) == text);

    private static ImmutableArray<Letter> Letters(string text, double probability) =>
        [.. text.Select(character => new Letter(character.ToString(), Probability.From(probability), [], default, default))];
}
