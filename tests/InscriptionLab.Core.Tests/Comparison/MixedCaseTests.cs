using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

public sealed class MixedCaseTests
{
    [Theory]
    [InlineData("TOoliVer", "Tolliver")]
    [InlineData("TLOliver", "Tolliver")]
    [InlineData("MoNTverera", "Monteverra")]
    [InlineData("Atolliver", "Tolliver")]
    public void Letters_swapped_added_or_in_the_wrong_case_are_weighed_like_any_others(string read, string form)
    {
        var list = new ReferenceList("list", string.Empty, [new ReferenceForm(form, form, AttestationStatus.Attested)]);

        var nearest = Assert.Single(new Comparer(list).Compare(new Reading("reader", [Line(read)], [])).Nearest);

        Assert.NotNull(nearest.LogLikelihoodRatio);
        Assert.NotEmpty(nearest.Differences);
    }

    /// <summary>A line whose every letter takes one frame at a probability of 0.9, blanks between.</summary>
    private static LineReading Line(string text)
    {
        const double Sure = 0.9;
        ImmutableArray<string> classes = [string.Empty, .. "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(letter => letter.ToString())];
        var rest = (float)Math.Log((1 - Sure) / (classes.Length - 1));
        var frames = text.SelectMany(letter => new[] { classes.IndexOf(letter.ToString()), 0 })
            .SelectMany(sure => Enumerable.Range(0, classes.Length).Select(one => one == sure ? (float)Math.Log(Sure) : rest));
        var crop = new GrayImage(1, 1, new byte[1]);
        var line = new LetteringLine(crop, new Same(), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(1), Probability.One);
        return new LineReading(
            line,
            [.. text.Select(letter => new Letter(letter.ToString(), Probability.From(Sure), [], default, default))],
            Probability.From(Sure),
            new LinePosteriors(classes, 0, [.. frames]));
    }

    private sealed class Same : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point) => point;
    }
}
