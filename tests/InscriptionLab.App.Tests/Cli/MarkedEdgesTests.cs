using System;
using InscriptionLab.App.Cli;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class MarkedEdgesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Two_sides_of_two_points_each_are_read_in_their_order()
    {
        var edges = MarkedEdges.Parse("-10,20.5,300,22/-10,120,300,1.2e2");

        Assert.NotNull(edges);
        Assert.Equal(new PixelSegment(new PixelPoint(-10, 20.5), new PixelPoint(300, 22)), edges.First);
        Assert.Equal(new PixelSegment(new PixelPoint(-10, 120), new PixelPoint(300, 120)), edges.Second);
    }

    [Theory]
    [InlineData("")]
    [InlineData("1,2,3,4")]
    [InlineData("1,2,3/4,5,6,7")]
    [InlineData("1,2,3,4/5,6,7,8/9,9,9,1")]
    [InlineData("1,2,3,x/5,6,7,8")]
    [InlineData("1,2,3,Infinity/5,6,7,8")]
    [InlineData("1,2,1,2/5,6,7,8")]
    public void Anything_else_costs_one_sentence(string text)
    {
        Assert.Null(MarkedEdges.Parse(text));

        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Script), $"--edges={text}", "--out", _folder.File("out"));

        Assert.Equal(2, run.Code);
        Assert.Contains("--edges", Assert.Single(run.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void One_mark_for_two_photos_costs_one_sentence()
    {
        var photo = SampleImages.PathOf(SampleImages.Script);

        var run = ProgramRun.Of("examine", photo, photo, "--edges", "0,10,100,10/0,60,100,60");

        Assert.Equal(2, run.Code);
        Assert.Contains("for 2 photos --edges stands there once", Assert.Single(run.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void The_marked_sides_are_the_outlines_of_the_record_and_the_record_says_so()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.NoTube), "--edges", "0,200,1000,200/0,500,1000,500", "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.Matches("""silhouettes":\[\[\[[-0-9.]+,200\],\[[-0-9.]+,200\]\],\[\[[-0-9.]+,500\],\[[-0-9.]+,500\]\]\]""", run.Output);
        Assert.Contains("\"diameter_px\":300", run.Output, StringComparison.Ordinal);
        Assert.Contains("marked by hand", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sides_beside_the_photo_are_said_to_be_and_the_photo_is_read_as_it_is()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.NoTube), "--edges", "9000,200,9900,200/9000,500,9900,500", "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.Contains("\"tube\":null", run.Output, StringComparison.Ordinal);
        Assert.Contains("lie outside the photo, which has", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sides_that_bound_no_tube_are_said_to_and_the_photo_is_read_as_it_is()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.NoTube), "--edges", "0,200,1000,200/0,200,1000,200", "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.Contains("\"tube\":null", run.Output, StringComparison.Ordinal);
        Assert.Contains("bound no tube", run.Output, StringComparison.Ordinal);
    }
}
