using System;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
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

    [Theory]
    [InlineData(29, false)]
    [InlineData(33, true)]
    public void Serifs_that_the_photo_cannot_show_say_nothing(double height, bool isSaid) =>
        Assert.Equal(isSaid, StyleWords.Of(Reading(height, ("Tolliver", "roman", 0.97), ("Day or Night", "sans", 0.95))) is not null);

    private static Reading Reading(params (string Text, string Style, double Probability)[] lines) => Reading(60, lines);

    private static Reading Reading(double height, params (string Text, string Style, double Probability)[] lines) => new("test", [.. lines.Select(line =>
        new LineReading(Line(height), [.. line.Text.Select(letter => new Letter(letter.ToString(), Probability.One, [], default, default))], Probability.One, null)
        {
            Style = [new StyleCandidate(line.Style, Probability.From(line.Probability)), new StyleCandidate(line.Style == "roman" ? "script" : "roman", Probability.From(Math.Min(0.04, 1 - line.Probability)))],
        })], []);

    private static LetteringLine Line(double height)
    {
        var box = new Quad(new(0, 0), new(200, 0), new(200, height), new(0, height));
        return new(new GrayImage(1, 1, [0]), new FlatStripMap(1), box, box, new LineDirection(default, false, false), PixelLength.FromPixels(height), Probability.One);
    }
}
