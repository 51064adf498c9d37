using System;
using CsCheck;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

public sealed class ScaleRequestTests
{
    [Theory]
    [InlineData("checkerboard:5mm", ScaleKind.Checkerboard, 5)]
    [InlineData("Rule:1mm", ScaleKind.Rule, 1)]
    [InlineData("aruco: 1 cm", ScaleKind.Aruco, 10)]
    [InlineData("rule:1/16inch", ScaleKind.Rule, 25.4 / 16)]
    [InlineData("checkerboard:0.25in", ScaleKind.Checkerboard, 6.35)]
    public void A_kind_with_a_size_is_understood(string text, ScaleKind kind, double millimetres)
    {
        Assert.True(ScaleRequest.TryParse(text, out var request, out var problem), problem);
        Assert.Equal(kind, request.Kind);
        Assert.Equal(millimetres, request.Size!.Value.Millimetres, 9);
    }

    [Fact]
    public void A_kind_alone_is_understood_and_has_no_size()
    {
        Assert.True(ScaleRequest.TryParse("aruco", out var request, out _));
        Assert.Null(request.Size);
    }

    [Fact]
    public void Points_and_a_disc_are_understood_with_their_places()
    {
        Assert.True(ScaleRequest.TryParse("points: 50mm@210,640.5/790,655", out var points, out var problem), problem);
        Assert.Equal([new PixelPoint(210, 640.5), new PixelPoint(790, 655)], points.Marks);
        Assert.Equal(50, points.Size!.Value.Millimetres, 9);
        Assert.True(ScaleRequest.TryParse("disc:23.25mm", out var disc, out problem), problem);
        Assert.Empty(disc.Marks);
        Assert.True(ScaleRequest.TryParse("disc:1inch@12,7", out disc, out problem), problem);
        Assert.Equal(new PixelPoint(12, 7), Assert.Single(disc.Marks));
        Assert.True(ScaleRequest.TryParse("ID1", out var card, out problem), problem);
        Assert.Equal(ScaleKind.Id1, card.Kind);
    }

    [Theory]
    [InlineData("id1:85mm", "standard")]
    [InlineData("disc", "diameter")]
    [InlineData("disc:23mm@1", "no point")]
    [InlineData("disc:23mm@1,2/3,4", "One point")]
    [InlineData("points", "distance")]
    [InlineData("points:50mm", "Two points")]
    [InlineData("points:50mm@1,2/3,4", "ten pixels")]
    [InlineData("points:50mm@1,2/a,4", "no point")]
    [InlineData("", "kind")]
    [InlineData("ruler:1mm", "kind")]
    [InlineData("rule:mm", "number")]
    [InlineData("rule:1/0mm", "number")]
    [InlineData("rule:1", "unit")]
    [InlineData("rule:1m", "unit \"m\"")]
    [InlineData("rule:-1mm", "between")]
    [InlineData("rule:0mm", "between")]
    [InlineData("checkerboard:5000mm", "between")]
    public void What_is_not_understood_gets_a_sentence_naming_the_fault(string text, string word)
    {
        Assert.False(ScaleRequest.TryParse(text, out var request, out var problem));
        Assert.Null(request);
        Assert.Contains(word, problem, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }

    [Fact]
    public void No_text_makes_the_reader_of_requests_throw() =>
        Gen.String.Sample(text => ScaleRequest.TryParse(text, out _, out var problem) || problem.Length > 0);

    [Fact]
    public void No_size_makes_the_reader_of_requests_throw() =>
        Gen.String[Gen.Char["0123456789./-+mincMINC "], 0, 12].Sample(text => ScaleRequest.TryParse("rule:" + text, out _, out var problem) || problem.Length > 0);
}
