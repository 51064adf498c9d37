using System;
using System.Linq;
using System.Text;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Outcomes;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Evidence;

public sealed class ConstructionTests
{
    private static readonly ReferenceList List = new("fabricated", string.Empty,
        [new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { Address = "14, Cawdry Lane", From = 1788, To = 1815, Certainty = FormCertainty.Certain }]);

    private static ConstructionRecord Record(string rows) => new ConstructionReader(ConstructionTable.Default).Read("record.csv", Encoding.UTF8.GetBytes("feature,observation\n" + rows));

    private static EvidenceReport Report(string rows, params string[] lines)
    {
        var reading = Fabricated.Reading(lines);
        return new EvidenceWeigher(List).Weigh(reading, new Judge().Decide(new Comparer(List).Compare(reading)), Circumstances.None with { Construction = Record(rows) });
    }

    private static string Refused(string rows) => Assert.Throws<InscriptionLabException>(() => Record(rows)).Message;

    [Fact]
    public void Every_row_of_the_checklist_says_what_it_rests_on()
    {
        Assert.All(ConstructionTable.Default.Rows, row => Assert.True(row.Source.Length > 10 && row.Question.Length > 5 && row.Part.Length > 0, row.Feature));
        Assert.All(ConstructionTable.Default.Rows.GroupBy(row => row.Feature), rows => Assert.True(rows.Count() > 1 && rows.Select(row => row.Question).Distinct().Count() == 1, rows.Key));
        Assert.All(["tube_material", "tube_rivets", "draw_seam", "draws", "lens_retention", "thread_position", "eyepiece_cartridge", "field_stop", "erector_stop", "shutter", "sunshade", "objective", "objective_stop", "knurling", "screws", "finish", "repairs", "serial_number"], feature => Assert.Contains(feature, ConstructionTable.Default.Features));
        Assert.DoesNotContain(ConstructionTable.Default.Rows, row => row.IsDated && row.Coverage > 0.97);
    }

    [Fact]
    public void A_blank_record_asks_every_question_and_answers_none()
    {
        var blank = new ConstructionReader(ConstructionTable.Default).Blank();
        var record = new ConstructionReader(ConstructionTable.Default).Read("blank.csv", Encoding.UTF8.GetBytes(blank));

        Assert.All(ConstructionTable.Default.Features, feature => Assert.Contains("\n" + feature + ",,", blank, StringComparison.Ordinal));
        Assert.Empty(record.Seen);
        Assert.Empty(record.Measures);
    }

    [Fact]
    public void A_part_later_than_the_address_allows_is_named()
    {
        var report = Report("draw_seam,none\nfinish,nickel\n", "Tolliver", "14 Cawdry Lane");

        Assert.Contains("The finish (nickel) says later than the address '14, Cawdry Lane' of Tolliver allows (1870 or later against 1788 to 1815). Parts may not belong together, or one is a repair.", report.Dating.Conflicts);
        Assert.Contains(report.Items, item => (item.Weight.Feature, item.Weight.Observation) == ("construction", "apart"));
        Assert.True(report.Dating.IsApart);
    }

    [Fact]
    public void Contradictions_widen_the_years_and_agreement_narrows_them()
    {
        int Width(string rows) => Report(rows, "Tolliver").Dating.Years is { } years ? (years.To ?? YearWeights.LastYear) - (years.From ?? YearWeights.FirstYear) : 0;

        Assert.True(Width("finish,nickel\n") > Width(string.Empty));
        Assert.True(Width("objective,achromatic\nlens_retention,burnished\n") <= Width(string.Empty));
    }

    [Fact]
    public void Parts_are_told_apart_and_remarks_kept()
    {
        var record = Record("thread_position,mixed\nerector_stop,wrong-place\nclear_mm,40\nstop_mm,20\nouter_mm,38\nmagnification,400\n");

        Assert.Contains(record.Remarks, remark => remark.Contains("parts may not belong together", StringComparison.Ordinal));
        Assert.Contains(record.Remarks, remark => remark.Contains("leaves 50 %", StringComparison.Ordinal));
        Assert.Contains(record.Remarks, remark => remark.Contains("not smaller than the outside", StringComparison.Ordinal));
        Assert.Contains(record.Remarks, remark => remark.Contains("look at the unit", StringComparison.Ordinal));
    }

    [Fact]
    public void The_next_look_is_at_an_open_question_and_would_narrow_the_years()
    {
        var next = Report("draw_seam,none\n", "Tollivor", "xyzzy").Dating.Next!;

        Assert.DoesNotContain("lengthwise seam", next.Question, StringComparison.Ordinal);
        Assert.True(next.YearsExpected < next.YearsNow);
    }

    [Theory]
    [InlineData("tube_materal,brass\n", "record.csv, row 2, column feature: 'tube_materal' is not one of tube_material, ")]
    [InlineData("draws,3\ndraws,4\n", "record.csv, row 3, column feature: 'draws' is answered twice; keep one answer.")]
    [InlineData("draws,many\n", "record.csv, row 2, column observation: 'many' is not one of 1, 2, 3, 4, 5, 6-or-more.")]
    [InlineData("clear_mm,38;2\n", "record.csv, row 2, column observation: '38;2' is not a number above zero, such as 38.2 (with a point).")]
    [InlineData("signature_direction,left\n", "record.csv, row 2, column observation: 'left' is not one of toward-eyepiece, toward-objective, around.")]
    public void A_wrong_answer_is_named_with_row_and_column(string rows, string sentence) => Assert.StartsWith(sentence, Refused(rows), StringComparison.Ordinal);

    [Theory]
    [InlineData("a,b,c,,1790,1780,,record,long enough", "column to: 1780 is before the first year, 1790.")]
    [InlineData("a,b,c,,17x,,,record,long enough", "column from: '17x' is not a year from 1650 to 1980.")]
    [InlineData("a,b,c,,,,2,record,long enough", "column coverage: '2' is not a share from 0.5 to 1, such as 0.8.")]
    [InlineData("a,b,c,,,,,hearsay,long enough", "column basis: 'hearsay' is not one of record, law, opinion, common practice.")]
    [InlineData("a,b,c,,,,,record,", "column source: is empty;")]
    public void A_wrong_checklist_is_named_with_row_and_column(string row, string sentence)
    {
        var text = "feature,observation,question,part,from,to,coverage,basis,source\n" + row + "\n";

        Assert.StartsWith("own.csv, row 2, " + sentence, Assert.Throws<InscriptionLabException>(() => ConstructionTable.Read("own.csv", Encoding.UTF8.GetBytes(text))).Message, StringComparison.Ordinal);
    }

    /// <summary>By hand: 100 years of 331 with coverage 0.9 leave (0.1 / 0.9) x 100 / 231 = 0.0481 outside for 1 inside, so that exactly 0.9 lies inside.</summary>
    [Fact]
    public void One_statement_holds_exactly_its_coverage()
    {
        var statement = new DateStatement("it", new DateInterval(1750, 1849), "test", DateKind.Construction, 0.9);
        var weights = YearWeights.Of([statement]);

        Assert.Equal(0.9, weights.Within(statement.Interval), 12);
        Assert.Equal(0.1 / 0.9 * 100 / 231, weights.Of(1700) / weights.Of(1800), 12);
        Assert.Equal(statement.Interval, weights.Holding(0.9));
        Assert.Equal(1, Enumerable.Range(YearWeights.FirstYear, 331).Sum(weights.Of), 12);
    }
}
