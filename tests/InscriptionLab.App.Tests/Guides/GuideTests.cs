using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using InscriptionLab.App.Guides;
using InscriptionLab.App.Tests.Cli;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.References;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Xunit;

namespace InscriptionLab.App.Tests.Guides;

public sealed partial class GuideTests
{
    public static TheoryData<string> Names => [.. GuideShelf.Names];

    [Fact]
    public void Every_file_is_a_guide() => Assert.Equal(
        Directory.EnumerateFiles(Path.Combine(SampleImages.Root, "src/InscriptionLab.App/Guides"), "*.md").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal),
        GuideShelf.Names.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_guide_is_listed_by_the_help_and_the_readme_and_printed_whole(string name)
    {
        var guide = GuideShelf.Find(name)!;
        var run = ProgramRun.Of("help", name);

        Assert.Equal(0, run.Code);
        Assert.StartsWith(guide.Title + "\n===", run.Output, StringComparison.Ordinal);
        Assert.Contains($"./lab help {name} ", ProgramRun.Of("help").Output, StringComparison.Ordinal);
        Assert.Contains($"(src/InscriptionLab.App/Guides/{name}.md)", DocumentCommands.TextOf("README.md"), StringComparison.Ordinal);
        var read = GuideMarkdown.Read(guide);
        Assert.All(read.Descendants<LiteralInline>(), words => Assert.Contains(Plain(words.Content.ToString()), Plain(run.Output), StringComparison.Ordinal));
        Assert.All(read.Descendants<CodeBlock>(), code => Assert.Contains(Plain(code.Lines.ToString()), Plain(run.Output), StringComparison.Ordinal));
        Assert.All(run.Output.Split('\n').Where(line => !line.StartsWith("    ", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, 100));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_guide_holds_no_markup_of_its_own(string name)
    {
        var read = Markdown.Parse(GuideShelf.Find(name)!.Text, new MarkdownPipelineBuilder().UsePipeTables().Build());

        Assert.Empty(read.Descendants<HtmlBlock>());
        Assert.Empty(read.Descendants<HtmlInline>());
        Assert.DoesNotContain(read.Descendants<LinkInline>(), link => link.IsImage);
    }

    [Fact]
    public void Markup_in_a_guide_comes_out_as_text_and_links_stay_on_the_page()
    {
        var html = GuideMarkdown.Html(new Guide("method", "Title", "# Title\n\n<script>alert(1)</script> [list](reference-list.md#the-columns), [above](#title), [code](../../../DEVELOPERS.md), [site](https://example.org/)\n"));

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#help/reference-list/the-columns\">list</a>", html, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#help/method/title\">above</a>", html, StringComparison.Ordinal);
        Assert.Contains("<em>code</em>", html, StringComparison.Ordinal);
        Assert.Contains("<a href=\"https://example.org/\">site</a>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("DEVELOPERS", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_example_of_a_finding_is_what_the_program_says()
    {
        var list = Fabricated.List("Tolliver", "Fennimarch");
        var comparison = new Comparer(list).Compare(Fabricated.Of(Fabricated.Line("Tollivor LONDON", 0.98).With(6, 0.96, ("c", 0.02), ("e", 0.008))));
        var finding = new Judge().Decide(comparison);
        var more = Enumerable.Range(2, 9).Select(piece => list.Forms[0] with { Note = string.Create(CultureInfo.InvariantCulture, $"piece {piece}") });
        var report = new EvidenceWeigher(list with { Forms = [.. list.Forms, .. more] }).Weigh(comparison.Reading, finding, Circumstances.None with { Prior = PriorOdds.Parse("3/17") });
        var guide = Plain(GuideShelf.Find("findings")!.Text);

        Assert.All(finding.Reasons, sentence => Assert.Contains(Plain(sentence), guide, StringComparison.Ordinal));
        Assert.All(report.Sentences.Take(1 + report.Ratios.Length + 1), sentence => Assert.Contains(Plain(sentence), guide, StringComparison.Ordinal));
    }

    [Fact]
    public void The_words_for_ratios_are_those_of_the_scale() =>
        Assert.All(EvidenceSentences.Scale, band => Assert.Contains($"| {band.Replace(": ", " | ", StringComparison.Ordinal)} |", GuideShelf.Find("findings")!.Text, StringComparison.Ordinal));

    [Fact]
    public void The_guide_on_lists_names_every_column_and_every_word_that_one_may_hold()
    {
        var guide = GuideShelf.Find("reference-list")!.Text;

        Assert.All(ReferenceColumns.All, column => Assert.Contains($"`{column}`", guide, StringComparison.Ordinal));
        Assert.All(ReferenceColumns.Words.Values.SelectMany(words => words), word => Assert.Contains($"`{word}`", guide, StringComparison.Ordinal));
    }

    [Fact]
    public void Help_on_what_there_is_not_costs_one_sentence()
    {
        var run = ProgramRun.Of("help", "weather");

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout("weather", run);
    }

    private static string Plain(string text) => Space().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Space();
}
