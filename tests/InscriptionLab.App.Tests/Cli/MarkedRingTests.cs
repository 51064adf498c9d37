using System;
using InscriptionLab.App.Cli;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class MarkedRingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Five_numbers_are_a_rim_and_a_sixth_is_its_opening()
    {
        var ring = MarkedRing.Parse("320,-10.5,200,150,30,0.6");

        Assert.NotNull(ring);
        Assert.Equal(new PixelEllipse(new PixelPoint(320, -10.5), PixelLength.FromPixels(200), PixelLength.FromPixels(150), Angle.FromDegrees(30)), ring.Rim);
        Assert.Equal(0.6, ring.Opening);
        Assert.Null(MarkedRing.Parse("320,240,200,150,30")!.Opening);
    }

    [Fact]
    public void The_half_axes_may_stand_in_either_order() =>
        Assert.Equal(MarkedRing.Parse("320,240,200,150,120")!.Rim, MarkedRing.Parse("320,240,150,200,30")!.Rim);

    [Theory]
    [InlineData("")]
    [InlineData("1,2,3,4")]
    [InlineData("1,2,3,4,5,0.5,7")]
    [InlineData("1,2,0,4,5")]
    [InlineData("1,2,3,-4,5")]
    [InlineData("1,2,3,4,5,1")]
    [InlineData("1,2,3,4,5,0")]
    [InlineData("1,2,3,x,5")]
    [InlineData("1,2,3,Infinity,5")]
    public void Anything_else_costs_one_sentence(string text)
    {
        Assert.Null(MarkedRing.Parse(text));

        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Script), $"--ring={text}", "--out", _folder.File("out"));

        Assert.Equal(2, run.Code);
        Assert.Contains("--ring", Assert.Single(run.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void One_mark_for_two_photos_costs_one_sentence()
    {
        var photo = SampleImages.PathOf(SampleImages.Script);

        var run = ProgramRun.Of("examine", photo, photo, "--ring", "320,240,200,150,30");

        Assert.Equal(2, run.Code);
        Assert.Contains("for 2 photos --ring stands there once", Assert.Single(run.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void Tube_and_ring_cannot_both_be_marked_on_one_photo()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Script), "--ring", "320,240,200,150,30", "--edges", "0,10,100,10/0,60,100,60");

        Assert.Equal(2, run.Code);
        Assert.Contains("cannot both mark one photo", Assert.Single(run.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void A_rim_beside_the_photo_is_said_to_and_the_photo_is_read_as_it_is()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.NoTube), "--ring", "9000,240,200,150,30", "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.DoesNotContain("\"ring\":", run.Output, StringComparison.Ordinal);
        Assert.Contains("outside the photo", run.Output, StringComparison.Ordinal);
    }
}
