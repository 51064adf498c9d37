using System;
using System.Collections.Generic;
using System.IO;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class BadInputTests : IDisposable
{
    private static readonly Dictionary<string, Func<TemporaryFolder, string>> Makers = new()
    {
        ["not a picture"] = BadFiles.NotAPicture,
        ["empty"] = BadFiles.Empty,
        ["cut off"] = BadFiles.CutOff,
        ["one pixel"] = BadFiles.OnePixel,
        ["30000 x 30000 in the header"] = BadFiles.HugeHeader,
        ["missing"] = BadFiles.Missing,
        ["a folder"] = BadFiles.Folder,
        ["a link that leads nowhere"] = BadFiles.DanglingLink,
    };

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string> Kinds => [.. Makers.Keys];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_file_that_is_no_photo_costs_one_sentence_and_a_bad_exit_code(string kind)
    {
        var file = Makers[kind](_folder);

        var run = ProgramRun.Of("examine", file, "--out", _folder.File("out"), "--json", _folder.File("out.jsonl"));

        Assert.Equal(1, run.Code);
        IsOneSentenceAbout(file, run);
        Assert.False(File.Exists(_folder.File("out.jsonl")));
        Assert.False(Directory.Exists(_folder.File("out")));
    }

    [Fact]
    public void The_other_photos_of_the_call_still_run()
    {
        var bad = BadFiles.CutOff(_folder);

        var run = ProgramRun.Of("examine", bad, SampleImages.PathOf(SampleImages.Blank), "--out", _folder.File("out"), "--json", _folder.File("out.jsonl"));

        Assert.Equal(1, run.Code);
        IsOneSentenceAbout(bad, run);
        Assert.Single(File.ReadAllLines(_folder.File("out.jsonl")));
        Assert.Contains("blank.jpg", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_without_a_tube_is_searched_as_it_is_and_says_so()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.NoTube), "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.Contains("\"tube\":null", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"outcome\":\"nothing-read\"", run.Output, StringComparison.Ordinal);
        Assert.Contains("tube", run.Output[run.Output.IndexOf("\"warnings\":[", StringComparison.Ordinal)..], StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_tube_without_lettering_gives_nothing_read()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Blank), "--out", _folder.File("out"), "--json", "-");

        Assert.Equal(0, run.Code);
        Assert.Contains("\"lines\":[]", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"outcome\":\"nothing-read\"", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_that_cannot_be_written_costs_one_sentence()
    {
        var target = _folder.File("no-such-folder/out.jsonl");

        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Blank), "--out", _folder.File("out"), "--json", target);

        Assert.Equal(1, run.Code);
        IsOneSentenceAbout(target, run);
    }

    [Fact]
    public void A_folder_that_cannot_be_made_costs_one_sentence()
    {
        var file = BadFiles.NotAPicture(_folder);

        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Blank), "--out", file);

        Assert.Equal(1, run.Code);
        IsOneSentenceAbout(file, run);
    }

    [Theory]
    [InlineData("form,maker\nA,B\n", "status")]
    [InlineData("form,maker,status\nA,B,genuine\n", "genuine")]
    public void A_bad_reference_list_names_what_is_wrong(string list, string named)
    {
        var file = _folder.File("list.csv");
        File.WriteAllText(file, list);

        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Blank), "--reference", file);

        Assert.Equal(1, run.Code);
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_reference_list_costs_one_sentence()
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(SampleImages.Blank), "--reference", _folder.File("none.csv"));

        Assert.Equal(1, run.Code);
        IsOneSentenceAbout("none.csv", run);
    }

    internal static void IsOneSentenceAbout(string subject, ProgramRun run)
    {
        var complaint = Assert.Single(run.Complaints);
        Assert.Contains(subject, complaint, StringComparison.Ordinal);
        Assert.EndsWith(".", complaint, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", complaint, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", complaint, StringComparison.Ordinal);
    }
}
