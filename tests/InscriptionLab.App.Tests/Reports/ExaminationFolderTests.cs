using System;
using System.Collections.Immutable;
using System.IO;
using System.Text.Json;
using InscriptionLab.App.Reports;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

public sealed class ExaminationFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_folder_holds_page_record_strip_and_marked_photo()
    {
        ExaminationFolder.Write(_folder.Path, [TruthExaminations.Of(SampleImages.RomanTransposed)], [], Provenances.Some);

        Assert.Equal(
            ["examination.html", "record.json", "roman-transposed-photo-marked.jpg", "roman-transposed-strip-letters.png", "roman-transposed-strip.png"],
            _folder.Names);
    }

    [Fact]
    public void The_page_needs_nothing_beside_itself_and_runs_no_script()
    {
        ExaminationFolder.Write(_folder.Path, [TruthExaminations.Of(SampleImages.RomanTransposed)], [], Provenances.Some);
        var page = File.ReadAllText(Path.Combine(_folder.Path, ExaminationFolder.Page));

        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("http://", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("https://", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=\"", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("data:image/jpeg;base64,", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_from_outside_is_escaped()
    {
        ExaminationFolder.Write(_folder.Path, [TruthExaminations.Of(SampleImages.RomanTransposed)], [], Provenances.Some with { List = "<img src=x onerror=alert(1)>\"'" });
        var page = File.ReadAllText(Path.Combine(_folder.Path, ExaminationFolder.Page));

        Assert.Contains("The form &lt;b&gt;nearest&lt;/b&gt; to", page, StringComparison.Ordinal);
        Assert.Contains("&lt;img src=x onerror=alert(1)&gt;&quot;&#39;", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>nearest", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_record_says_what_it_was_made_with()
    {
        ExaminationFolder.Write(_folder.Path, [TruthExaminations.Of(SampleImages.RomanTransposed)], [], Provenances.Some);
        using var record = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder.Path, ExaminationFolder.Record)));
        var root = record.RootElement;

        Assert.Equal("InscriptionLab 0", root.GetProperty("program").GetString());
        Assert.Equal("aa", root.GetProperty("models")[0].GetProperty("sha256").GetString());
        Assert.Equal("bb", root.GetProperty("reference").GetProperty("sha256").GetString());
        Assert.True(root.GetProperty("photos")[0].GetProperty("seconds").GetProperty("strip").GetDouble() >= 0);
        Assert.Equal("Move the lamp low to one side and take a second photo.", root.GetProperty("photos")[0].GetProperty("finding").GetProperty("retake")[0].GetString());
    }

    [Fact]
    public void Two_photos_of_one_name_do_not_overwrite_each_other()
    {
        var examination = TruthExaminations.Of(SampleImages.RomanTransposed);
        ExaminationFolder.Write(_folder.Path, ImmutableArray.Create(examination, examination), [], Provenances.Some);

        Assert.Contains("1-roman-transposed-strip.png", _folder.Names);
        Assert.Contains("2-roman-transposed-strip.png", _folder.Names);
    }
}
