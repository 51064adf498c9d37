using System;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using System.Threading;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.App.Tests.Records;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

/// <summary>The weighing in every form in which the program writes it, on samples whose letters are given by their truth.</summary>
public sealed class EvidenceReportTests
{
    private static readonly string[] Samples = [SampleImages.RomanTransposed, SampleImages.Script, SampleImages.RomanThreeLines];

    private static Examination Weighed(string sample, string? prior = "3/17")
    {
        var list = DemoReferences.Load();
        var comparer = new Comparer(list);
        var weigher = new EvidenceWeigher(list, null, comparer);
        var construction = new ConstructionReader(ConstructionTable.Default).Read("piece.csv", "feature,observation\ndraw_seam,none\nfinish,nickel\ncovering,vellum\nclear_mm,38\nstop_mm,20\n"u8);
        var stages = TruthExaminations.Stages(sample) with
        {
            Compare = comparer.Compare,
            Judge = new Judge().Decide,
            Weigh = (reading, finding, seen) => weigher.Weigh(reading, finding, seen with { Construction = construction, Prior = prior is null ? null : PriorOdds.Parse(prior) }),
        };
        return new Examiner(stages, TimeProvider.System).Examine(SampleImages.PathOf(sample), CancellationToken.None);
    }

    [Fact]
    public void The_record_keeps_to_the_schema_with_and_without_odds_beforehand()
    {
        foreach (var sample in Samples)
        {
            var (with, without) = (JsonLines.LineOf(RecordMaker.Of(Weighed(sample))), JsonLines.LineOf(RecordMaker.Of(Weighed(sample, null))));

            Assert.True(Schema.Examine.Accepts(with), with);
            Assert.True(Schema.Examine.Accepts(without), without);
            Assert.Contains("\"posterior\":null", without, StringComparison.Ordinal);
            Assert.False(Schema.Examine.Accepts(with.Replace("\"rows\":", "\"row\":", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Screen_and_page_print_explanations_ratios_years_and_the_table_of_words()
    {
        var examination = Weighed(SampleImages.RomanTransposed);
        string[] texts = [TextReport.Of(examination).ReplaceLineEndings(" "), ExaminationPage.Of([examination], [], Provenances.Some)];

        Assert.All(texts, text =>
        {
            var plain = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains("H: the house named had it cut", plain, StringComparison.Ordinal);
            Assert.Contains("10 to 100: moderate support", plain, StringComparison.Ordinal);
            Assert.Contains("1,000,000 and more: extremely strong support", plain, StringComparison.Ordinal);
            Assert.Contains("For the odds beforehand that you gave, 3/17", plain, StringComparison.Ordinal);
            Assert.Contains("says later than", plain, StringComparison.Ordinal);
            Assert.Contains("The weights are choices, not counts", plain, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void No_report_certifies_and_none_accuses()
    {
        string[] never = ["fake", "forge", "forgery", "fraud", "genuine", "authentic", "deceiv", "dishonest", "cheat", "guarantee", "counterfeit", "spurious"];

        foreach (var sample in Samples)
        {
            var examination = Weighed(sample);
            var page = Regex.Replace(ExaminationPage.Of([examination], [], Provenances.Some), "base64,[A-Za-z0-9+/=]*", string.Empty);
            var text = TextReport.Of(examination) + JsonLines.LineOf(RecordMaker.Of(examination)) + page;
            Assert.All(never, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
        }

        var tables = new StringBuilder().AppendJoin('\n', EvidenceTables.Weights.Select(row => row.Source + row.WouldChange)).AppendJoin('\n', ConstructionTable.Default.Rows.Select(row => row.Source + row.Remark)).ToString();
        Assert.All(never.Append("seller"), word => Assert.DoesNotContain(word, tables, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Photos_that_name_two_houses_are_told()
    {
        var one = Weighed(SampleImages.RomanThreeLines);
        string[] houses = ["Tolliver", "Corvestri"];
        var asCorvestri = one with { Finding = one.Finding with { Outcome = FindingOutcome.Agrees, Leading = one.Finding.Nearest[0] with { Form = one.Finding.Nearest[0].Form with { Maker = houses[1] } } } };
        var asTolliver = one with { Finding = one.Finding with { Outcome = FindingOutcome.Agrees, Leading = one.Finding.Nearest[0] with { Form = one.Finding.Nearest[0].Form with { Maker = houses[0] } } } };

        Assert.Equal(houses, PhotosOfOneObject.Houses([asTolliver, asCorvestri, asTolliver]));
        Assert.Contains("The photos name Tolliver and Corvestri", PhotosOfOneObject.Sentence([.. houses]), StringComparison.Ordinal);
    }
}
