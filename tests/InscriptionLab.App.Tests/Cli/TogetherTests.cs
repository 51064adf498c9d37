using System;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
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

    /// <summary>The lamps as the sample's truth has them: side of the picture and height over it, in whole degrees.</summary>
    [Fact]
    public void Stated_lamps_give_the_form_of_the_surface_as_pictures_and_as_a_page_that_runs_its_own_script_only()
    {
        var folder = _folder.File("out");
        Examine([.. Lamps, "--lamp", "11:21", "--lamp", "186:10", "--lamp", "above:33", "--lamp", "56:15"]);

        foreach (var name in (string[])["together-relief.png", "together-normals.png", "together-grooves.png"])
        {
            Assert.True(new FileInfo(Path.Combine(folder, name)).Length > 10_000, name);
        }

        var page = File.ReadAllText(Path.Combine(folder, "examination.html"));
        var script = Assert.Single(Regex.Matches(page, "<script>(.*?)</script>", RegexOptions.Singleline)).Groups[1].Value;
        Assert.Contains($"script-src &#39;sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script))).Replace("+", "&#43;", StringComparison.Ordinal)}&#39;", page.Replace("+", "&#43;", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("default-src &#39;none&#39;", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", page, StringComparison.OrdinalIgnoreCase);
        using var record = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "record.json")));
        var relief = record.RootElement.GetProperty("together")[0].GetProperty("relief");
        Assert.Equal("normals", relief.GetProperty("kind").GetString());
        Assert.Equal("relative", relief.GetProperty("unit").GetString());
        Assert.Equal(4, relief.GetProperty("lamps").GetArrayLength());
    }

    [Theory]
    [InlineData("--lamp is given once for each photo", "left")]
    [InlineData("--lamp sideways", "sideways", "left")]
    [InlineData("--lamp left:95", "left:95", "left")]
    public void Lamps_that_are_not_understood_cost_one_sentence(string sentence, params string[] lamps)
    {
        var run = ProgramRun.Of(["examine", Lamps[0], Lamps[1], .. lamps.SelectMany(lamp => new[] { "--lamp", lamp })]);

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(sentence, run);
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
