using System;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Tests.Records;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class TogetherTests : IDisposable
{
    private static readonly string[] Lamps = [.. Enumerable.Range(1, 4).Select(lamp => SampleImages.PathOf($"raking-{lamp}.jpg"))];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Photos_of_one_view_under_different_lamps_are_known_as_such_and_keep_the_misspelling()
    {
        var lines = Examine(Lamps);

        Assert.Equal(5, lines.Length);
        Assert.All(lines, line => Assert.True(Schema.Examine.Accepts(line), line));
        var set = JsonLines.SetOf(lines[^1]);
        Assert.Equal("raking", set.Set);
        Assert.Equal(Lamps, set.Files);
        Assert.Equal(SampleImages.TruthOf("raking-1.jpg").Maker, set.Lines[0].Text);
    }

    [Fact]
    public void Photos_that_are_to_stay_separate_stay_separate() => Assert.Equal(2, Examine([Lamps[0], Lamps[1], "--as", "separate"]).Length);

    [Fact]
    public void Photos_of_different_things_are_not_read_together() =>
        Assert.Equal(2, Examine([SampleImages.PathOf(SampleImages.Script), SampleImages.PathOf(SampleImages.RomanThreeLines)]).Length);

    [Fact]
    public void One_photo_given_twice_is_no_second_witness()
    {
        var run = ProgramRun.Of("examine", Lamps[0], Lamps[0], "--as", "raking", "--json", "-", "--out", _folder.File("out"));

        Assert.Equal(1, run.Code);
        BadInputTests.IsOneSentenceAbout("--as raking", run);
        Assert.DoesNotContain("\"set\"", run.Output, StringComparison.Ordinal);
    }

    private string[] Examine(string[] arguments)
    {
        var target = _folder.File("out.jsonl");
        var run = ProgramRun.Of(["examine", .. arguments, "--json", target, "--out", _folder.File("out")]);
        Assert.Equal(0, run.Code);
        return File.ReadAllLines(target);
    }
}
