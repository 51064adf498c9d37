using System;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
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
    public void Photos_of_one_cell_are_combined_and_the_report_says_what_the_glass_could_do()
    {
        var photo = SampleImages.PathOf(SampleImages.CellCheckerboard);

        var run = ProgramRun.Of("measure", photo, photo, "--one-cell", "--scale", "checkerboard:5mm", "--plane-offset", "0", "--focal", "600mm", "--eyepiece-focal", "30mm", "--stop-distance", "60mm", "--catalogue", _folder.File("kept.db"), "--out", _folder.File("out"));

        Assert.Equal(0, run.Code);
        Assert.Contains("the photos together", run.Output, StringComparison.Ordinal);
        Assert.Contains("exit pupil diameter", run.Output, StringComparison.Ordinal);
        Assert.Contains("Never point a telescope at the Sun", run.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(_folder.File("kept.db")));
        var record = JsonNode.Parse(File.ReadAllText(_folder.File("out/record.json")))!;
        var outer = record["together"]![0]!;
        Assert.Equal(2, outer["readings_mm"]!.AsArray().Count);

        // Both are one file: their mean is each one's diameter, and draws at random agree with the law of propagation.
        Assert.Equal(record["photos"]![0]!["circles"]![0]!["diameter_mm"]!.GetValue<double>(), outer["diameter_mm"]!.GetValue<double>(), 4);
        var combined = outer["combined_standard_uncertainty_mm"]!.GetValue<double>();
        Assert.InRange(outer["monte_carlo_95_percent_mm"]!.GetValue<double>(), 1.8 * combined, 2.3 * combined);
        Assert.Contains(record["optics"]!["figures"]!.AsArray(), figure => figure!["name"]!.GetValue<string>() == "twilight number");
        Assert.InRange(record["photos"]![0]!["circles"]![0]!["edge_residual_rms_px"]!.GetValue<double>(), 0.001, 1);
        Assert.Contains("class=\"residuals\"", File.ReadAllText(_folder.File("out/measurement.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--one-cell", "two photos")]
    [InlineData("--focal=zero", "--focal")]
    [InlineData("--abbe=60", "two numbers")]
    public void What_is_not_understood_is_told_before_anything_is_measured(string option, string words)
    {
        var run = ProgramRun.Of("measure", SampleImages.PathOf(SampleImages.CellCheckerboard), option, "--out", _folder.File("out"));

        Assert.Equal(2, run.Code);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.File("out")));
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
