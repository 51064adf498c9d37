using System;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.App.Tests.Examining;

public sealed class StyleWordsTests
{
    [Fact]
    public void Lines_surely_in_two_styles_are_named_as_an_observation()
    {
        var said = StyleWords.Of(Reading(("Tolliver", "script", 0.97), ("Brackhaven", "roman", 0.95)));

        Assert.Contains("'Tolliver' is cut in script, 'Brackhaven' in roman", said, StringComparison.Ordinal);
        Assert.Contains("no proof", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("roman", 0.97)]
    [InlineData("script", 0.8)]
    public void One_style_or_an_unsure_one_is_not_worth_a_word(string style, double probability) =>
        Assert.Null(StyleWords.Of(Reading(("Tolliver", style, probability), ("Brackhaven", "roman", 0.95))));

    [Fact]
    public void A_number_is_too_short_to_have_a_style() => Assert.Null(StyleWords.Of(Reading(("No12", "script", 0.97), ("Brackhaven", "roman", 0.95))));

    private static Reading Reading(params (string Text, string Style, double Probability)[] lines) => new("test", [.. lines.Select(line =>
        new LineReading(null!, [.. line.Text.Select(letter => new Letter(letter.ToString(), Probability.One, [], default, default))], Probability.One, null)
        {
            Style = [new StyleCandidate(line.Style, Probability.From(line.Probability)), new StyleCandidate(line.Style == "roman" ? "script" : "roman", Probability.From(Math.Min(0.04, 1 - line.Probability)))],
        })], []);
}
