using System;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Tests.Cli;
using InscriptionLab.App.Tests.Records;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.App.Tests.Rings;

/// <summary>Drawn rings through the whole program: see <see cref="RingFigures"/> for the figures over many.</summary>
public sealed class RingReadingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Lettering_that_runs_over_the_first_column_is_read_whole_and_once()
    {
        // The first column of an uncut strip lies on the longer axis of the rim's image, here level with the text's middle.
        var score = Scored(Ring(14, [Text("Tollivor & Son", 0, true)]));

        Assert.Equal("Tollivor & Son", Assert.Single(score.Examination.Reading.Lines).Text);
        Assert.InRange(score.RimError!.Value, 0, 6);
        Assert.True(score.Overlaps.Average() > 0.7, $"boxes {score.Overlaps.Average():0.00}");
        Assert.True(score.Overlaps.Min() > 0.3, $"worst box {score.Overlaps.Min():0.00}");

        var record = JsonLines.LineOf(RecordMaker.Of(score.Examination) with { File = "ring.jpg" });
        Assert.True(Schema.Examine.Accepts(record), record);
        Assert.Contains("\"tops\":\"outward\",\"by_hand\":false", record, StringComparison.Ordinal);
        Assert.Contains("clockwise, its tops away", TextReport.Of(score.Examination), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_texts_each_is_read_in_its_own_sense()
    {
        var score = Scored(Ring(8, [Text("FENNIMARCH", 1.2, true), Text("Brackhaven", 1.2 + Math.PI, false)]));

        Assert.Equal(["Brackhaven", "FENNIMARCH"], score.Examination.Reading.Lines.Select(line => line.Text).Order(StringComparer.Ordinal));
        var map = Assert.IsType<RingStripMap>(score.Examination.Strip.Map);
        Assert.Equal("both", RecordMaker.Of(score.Examination).Ring!.Tops);

        // One turn and no more, and every letter has its box in it.
        Assert.InRange(score.Examination.Strip.Image.Width, map.ColumnsPerTurn - 1, map.ColumnsPerTurn);
        Assert.All(score.Examination.Reading.Lines.SelectMany(line => line.Letters), letter => Assert.NotNull(StripBoxes.Of(letter, score.Examination.Strip)));
    }

    [Fact]
    public void Lettering_all_the_way_round_begins_after_its_widest_gap()
    {
        var score = Scored(Ring(6, [Text("Tollivor & Son Opticians Brackhaven Quay", 2.5, true)]));

        Assert.Equal("Tollivor & Son Opticians Brackhaven Quay", string.Join(' ', score.Examination.Reading.Lines.Select(line => line.Text)));
    }

    [Fact]
    public void A_blank_ring_gives_no_letter()
    {
        var score = Scored(Ring(10, []) with { Turning = 0.15 });

        Assert.Null(score.Examination.Ring);
        Assert.Empty(score.Examination.Reading.Lines);
    }

    [Theory]
    [InlineData("cell-checkerboard.jpg", 0)]
    [InlineData("cell-markers.jpg", 0)]
    [InlineData("cell-ruler.jpg", 1)]
    public void The_names_round_the_cells_of_the_samples_are_read(string cell, int misread)
    {
        var run = ProgramRun.Of("examine", SampleImages.PathOf(cell), "--json", "-", "--out", _folder.File("out"));

        var record = JsonLines.PhotoOf(run.Output);
        Assert.Equal("outward", record.Ring!.Tops);
        Assert.InRange(EditDistance.Between(Assert.Single(SampleImages.TruthOf(cell).Lines), record.Lines[0].Text), 0, misread);
    }

    [Fact]
    public void A_ring_marked_by_hand_is_laid_flat_as_marked_and_the_record_says_so()
    {
        var ring = Ring(0, [Text("Tollivor & Son", 0.5, false)]);
        var file = _folder.File("ring.jpg");
        File.WriteAllBytes(file, PictureEncoder.ToJpeg(ring.Draw().Colour, int.MaxValue));
        var rim = ring.Scene.EllipseOf(1);
        var mark = FormattableString.Invariant($"{rim.Centre.X:0.#},{rim.Centre.Y:0.#},{rim.SemiMajor.Pixels:0.#},{rim.SemiMinor.Pixels:0.#},0,0.55");

        var run = ProgramRun.Of("examine", file, "--ring", mark, "--json", _folder.File("out.jsonl"), "--out", _folder.File("out"));

        Assert.Equal(0, run.Code);
        var line = File.ReadAllText(_folder.File("out.jsonl"));
        Assert.True(Schema.Examine.Accepts(line), line);
        var record = JsonLines.PhotoOf(line);
        Assert.Equal("Tollivor & Son", Assert.Single(record.Lines).Text);
        Assert.Null(record.Tube);
        Assert.True(record.Ring!.ByHand);
        Assert.Equal("inward", record.Ring.Tops);
        Assert.Contains("marked by hand", Assert.Single(record.Warnings), StringComparison.Ordinal);
        Assert.Contains("The face of the ring laid flat", File.ReadAllText(Path.Combine(_folder.File("out"), "examination.html")), StringComparison.Ordinal);
        Assert.Contains($"--ring {mark}", File.ReadAllText(Path.Combine(_folder.File("out"), "record.json")), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder.File("out"), "ring-strip-letters.png")));
    }

    private static RingScore Scored(EngravedRing ring)
    {
        using var composition = new Composition();
        return RingScore.Of(composition, ring);
    }

    private static RingText Text(string text, double middle, bool topsOutward) => new(text, RingCases.Roman, 0.09, middle, topsOutward) { Spacing = 0.15 };

    private static EngravedRing Ring(double tiltDegrees, RingText[] texts) => new(
        new RingScene { Tilt = tiltDegrees * Math.PI / 180, Inner = 0.6, Focal = 1200, Distance = 4.5, CentreX = 385, CentreY = 310 },
        [.. texts])
    {
        Width = 760,
        Height = 620,
    };
}
