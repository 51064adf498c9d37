using System;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Tests.Records;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class MeasureTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_cell_beside_a_card_is_measured_and_the_json_keeps_to_the_schema()
    {
        var truth = SampleImages.TruthOf(SampleImages.CellCheckerboard).Measures!;

        var run = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.CellCheckerboard), "--scale", "checkerboard:5mm", "--json", _folder.File("out.jsonl"), "--out", _folder.File("out"));

        Assert.Equal(0, run.Code);
        var line = Assert.Single(File.ReadAllLines(_folder.File("out.jsonl")));
        Assert.True(Schema.Measure.Accepts(line), line);
        var record = JsonLines.MeasureOf(line);
        Assert.Equal("checkerboard", record.Scale!.Source);
        Assert.Equal(["outer", "clear", "stop"], record.Circles.Select(circle => circle.Role));
        Assert.All(record.Circles, circle => Assert.Equal(truth.Of(circle.Role)!.Value, circle.DiameterMm, circle.ExpandedUncertaintyMm));
    }

    [Fact]
    public void The_folder_holds_page_record_and_marked_photo_and_the_record_has_the_budget()
    {
        _ = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.CellCheckerboard), "--scale", "checkerboard:5mm", "--out", _folder.File("out"));

        Assert.Equal(
            ["cell-checkerboard-marked.jpg", MeasurementFolder.Page, MeasurementFolder.Record],
            Directory.GetFiles(_folder.File("out")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));
        Assert.Contains("\"budget\"", File.ReadAllText(_folder.File("out/record.json")), StringComparison.Ordinal);
        var page = File.ReadAllText(_folder.File("out/measurement.html"));
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_without_a_cell_measures_nothing_and_says_why()
    {
        var run = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.NoTube), "--json", "-", "--out", _folder.File("out"));

        Assert.Equal(0, run.Code);
        Assert.True(Schema.Measure.Accepts(run.Output), run.Output);
        var record = JsonLines.MeasureOf(run.Output);
        Assert.Null(record.Scale);
        Assert.Empty(record.Circles);
        Assert.NotEmpty(record.Warnings);
    }

    [Theory]
    [InlineData("--scale", "banana:3mm", "banana")]
    [InlineData("--scale", "rule:wide", "wide")]
    [InlineData("--scale", "rule:-1mm", "-1mm")]
    [InlineData("--plane-offset", "high", "high")]
    [InlineData("--plane-offset", "4000", "4000")]
    public void An_option_that_is_not_understood_costs_one_sentence_and_exit_code_2(string option, string value, string named)
    {
        var run = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.CellCheckerboard), option, value);

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(named, run);
    }

    [Fact]
    public void A_negative_offset_is_a_number_and_no_option()
    {
        var run = ProgramRun.Of("measure", BadFiles.Missing(_folder), "--plane-offset", "-3");

        Assert.Equal(1, run.Code);
        BadInputTests.IsOneSentenceAbout("nowhere.jpg", run);
    }

    [Fact]
    public void A_bad_photo_costs_one_sentence_and_the_others_are_measured()
    {
        var bad = BadFiles.NotAPicture(_folder);

        var run = ProgramRun.Of("measure", bad, SampleImages.PathOf(SampleImages.CellCheckerboard), "--scale", "checkerboard:5mm", "--json", "-", "--out", _folder.File("out"));

        Assert.Equal(1, run.Code);
        BadInputTests.IsOneSentenceAbout(bad, run);
        Assert.Single(run.Output.TrimEnd('\n').Split('\n'));
    }
}
