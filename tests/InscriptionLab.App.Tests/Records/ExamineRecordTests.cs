using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Tests.Cli;
using InscriptionLab.Gathering;
using Xunit;

namespace InscriptionLab.App.Tests.Records;

public sealed class ExamineRecordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_the_program_writes_keeps_to_the_schema()
    {
        string[] names = [SampleImages.Script, SampleImages.RomanThreeLines, SampleImages.Blank, SampleImages.NoTube, SampleImages.Mirrored];
        var files = names.Select(SampleImages.PathOf).ToArray();

        var run = ProgramRun.Of([.. new[] { "examine" }, .. files, "--as", "separate", "--out", _folder.File("out"), "--json", _folder.File("out.jsonl")]);

        Assert.Equal(0, run.Code);
        var lines = File.ReadAllLines(_folder.File("out.jsonl"));
        Assert.Equal(files, lines.Select(line => JsonLines.PhotoOf(line).File));
        Assert.All(lines, line => Assert.True(Schema.Examine.Accepts(line), line));
    }

    [Fact]
    public void A_photo_with_tube_letters_and_finding_keeps_to_the_schema()
    {
        var line = JsonLines.LineOf(RecordMaker.Of(TruthExaminations.Of(SampleImages.RomanTransposed)));

        Assert.True(Schema.Examine.Accepts(line), line);
        Assert.False(Schema.Examine.Accepts(line.Replace("\"outcome\":\"differs\"", "\"outcome\":\"genuine\"", StringComparison.Ordinal)));
        Assert.False(Schema.Examine.Accepts(line.Replace("\"sha256\"", "\"md5\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void Photos_read_together_keep_to_the_schema()
    {
        var one = TruthExaminations.Of(SampleImages.RomanTransposed);

        var line = JsonLines.LineOf(RecordMaker.Of(new SetExamination(SetKind.Raking, [one, one], one.Reading, one.Finding)));

        Assert.True(Schema.Examine.Accepts(line), line);
        Assert.StartsWith("{\"set\":\"raking\",\"files\":[", line, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_leave_out_the_spaces_that_the_text_has()
    {
        var record = RecordMaker.Of(TruthExaminations.Of(SampleImages.Script));

        Assert.Equal(["Pellowic", "Port Tressick", "No. 1409"], record.Lines.Select(line => line.Text));
        Assert.Equal("PortTressick", string.Concat(record.Lines[1].Letters.Select(letter => letter.Char)));
    }

    [Fact]
    public void The_file_is_named_as_the_user_named_it()
    {
        var odd = Path.Combine(SampleImages.Folder, "..", "sample-images", SampleImages.Blank);

        Assert.Equal(odd, JsonLines.PhotoOf(ProgramRun.Of("examine", odd, "--json", "-", "--out", _folder.File("out")).Output).File);
    }

    [Fact]
    public void Letters_are_written_as_they_are_and_not_as_escapes()
    {
        var line = JsonLines.LineOf(new PhotoRecord("à.jpg", new string('0', 64), null, [new LineRecord("à ß ſ", [])], new FindingRecord("undecided", [], []), []));

        Assert.Contains("à ß ſ", line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_survives_its_own_json()
    {
        var line = JsonLines.LineOf(RecordMaker.Of(TruthExaminations.Of(SampleImages.Script)));

        Assert.Equal(line, JsonLines.LineOf(JsonLines.PhotoOf(line)));
        using var parsed = JsonDocument.Parse(line);
        Assert.Equal(["file", "sha256", "tube", "lines", "finding", "warnings", "advice"], parsed.RootElement.EnumerateObject().Select(property => property.Name));
    }

    [Fact]
    public void The_diameter_is_measured_at_the_middle_of_the_lettering()
    {
        var truth = SampleImages.TruthOf(SampleImages.RomanThreeLines);
        var record = RecordMaker.Of(TruthExaminations.Of(SampleImages.RomanThreeLines));

        // The renderer measured it there too; a hundredth of the diameter is far below how much it changes along this tube.
        Assert.Equal(truth.TubeDiameter!.Value, record.Tube!.DiameterPx, truth.TubeDiameter.Value / 100);
    }
}
