using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

/// <summary>The parts of a report beside picture and lettering: evidence, years, advice, ring, sets, construction.</summary>
public sealed class PaperSectionsTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

    private static readonly EvidenceRecord Evidence = new(
        "Sallowby",
        5,
        [new EvidenceItemRecord("The lettering is roman.", "style", "as-attested", new RatiosRecord(0.301, 0.602, 0.301, false), "choice", "a handbook", "a dated piece")],
        new RatiosRecord(0.301, 0.699, 0.301, true),
        new YearsRecord(1790, 1820, 0.9, true, [new DateStatementRecord("the form 'Sallowby'", "form", 1785, 1825, 0.8, "a directory"), new DateStatementRecord("screws hand cut", "construction", null, 1830, 0.7, "common practice")], [], "What would narrow the years most: whether the tube is riveted."),
        null,
        ["screws hand cut: mostly before lathes (common practice)."],
        "3/17",
        new PosteriorRecord(0.25, 0.5, 0.25),
        "What would decide most: where the signature stands.",
        []);

    private static readonly PaperObject Whole = new("Piece", null, null, null,
    [
        new PaperPhoto
        {
            Name = "one.jpg",
            Sha256 = new string('a', 64),
            Width = 400,
            Height = 200,
            Finding = new PaperFinding(FindingOutcome.Agrees, ["Every letter agrees."], [], [], []),
            Evidence = Evidence,
            Advice = new AdviceRecord("focus", [new LimitRecord("focus", "The lettering is out of focus.", "width of edges", 6.25, 4, "px", "a paper", ["Touch the lettering to focus.", "Rest the camera."])]),
            Ring = new RingRecord(new EllipseRecord([100, 90], [80, 70], 5), new EllipseRecord([101, 91], [50, 44], 5), "outward", ByHand: true),
            Sizes = ["Tube: (41.0 \u00b1 0.2) mm."],
            Measures = [new PaperMeasure("rim", "(40.00 \u00b1 0.05) mm", string.Empty, [])],
            Optics = [["exit pupil", "2.1 mm", "aperture and magnification"]],
            OpticsNotes = ["A stop may lie inside."],
        },
    ])
    {
        Sets = [new PaperSet("2 photos read together: one view under different lamps", ["one.jpg", "two.jpg"]) { Reasons = ["The lettering lies at the same place."], Evidence = Evidence }],
        Construction = [("of what the main tube is made", "brass (A. Harbourer, 2026-03-01)")],
        Requests = ["The lettering with a rule beside it."],
    };

    [Theory]
    [InlineData("The lettering is roman.")]
    [InlineData("All together is 2.0 times more probable if the house named had it cut than if another had it cut in the house")]
    [InlineData(">4.0<")]
    [InlineData("capped by the number of rows for the house")]
    [InlineData("For the odds beforehand that you gave, 3/17: 25 %")]
    [InlineData("1790 to 1820 (90 % of the weight, each statement doubted as said)")]
    [InlineData(">1830 or earlier<")]
    [InlineData("What would narrow the years most")]
    [InlineData("width of edges 6.25 px, limit 4 px")]
    [InlineData("Touch the lettering to focus. Rest the camera.")]
    [InlineData("an ellipse of 160.0 x 140.0 pixels about 100.0, 90.0")]
    [InlineData("by hand")]
    [InlineData("(41.0 \u00b1 0.2) mm")]
    [InlineData("exit pupil")]
    [InlineData("2 photos read together")]
    [InlineData("one.jpg, two.jpg.")]
    [InlineData("brass (A. Harbourer, 2026-03-01)")]
    [InlineData("The lettering with a rule beside it.")]
    public void Every_part_stands_in_the_report(string text) =>
        Assert.Contains(text, System.Net.WebUtility.HtmlDecode(HtmlPaper.Of(FullReport.Of("Piece", [Whole], Noon, "InscriptionLab"))), StringComparison.Ordinal);

    [Fact]
    public void The_short_form_gives_the_years_and_what_was_seen()
    {
        var page = HtmlPaper.Of(ShortForm.Of("Piece", [Whole], Noon, "InscriptionLab"));

        Assert.Contains("1790 to 1820", page, StringComparison.Ordinal);
        Assert.Contains("of what the main tube is made: brass", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_weighed_or_judged_leaves_no_empty_parts()
    {
        var page = HtmlPaper.Of(FullReport.Of("Piece", [Whole with { Photos = [Whole.Photos[0] with { Evidence = null, Advice = null, Ring = null, Sizes = [], Optics = [] }], Sets = [], Construction = [], Requests = [] }], Noon, "InscriptionLab"));

        foreach (var heading in new[] { "How strongly", "Years that", "What limits", "The face of the ring", "in millimetres", "What the glass", "read together", "Construction, as", "to ask the seller" })
        {
            Assert.DoesNotContain(heading, page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_printed_report_of_all_parts_is_whole() =>
        Assert.Equal("%PDF-"u8.ToArray(), PdfPaper.Of(FullReport.Of("Piece", [Whole], Noon, "InscriptionLab"))[..5]);

    [Fact]
    public void A_record_gives_the_ratios_that_the_weighing_gave()
    {
        // 0.602 is log10 of 4.0; worked by hand.
        var grid = EvidenceBlocks.Of(Evidence).OfType<Block.Grid>().First();

        Assert.Equal(["The lettering is roman.", "2.0", "4.0", "2.0", "choice: a handbook", "a dated piece"], grid.Rows[0]);
        Assert.Equal(new DateInterval(1790, 1820).ToString(), EvidenceBlocks.IntervalOf(Evidence));
        Assert.Equal(ImmutableArray.Create("H:P", "H:M", "P:M"), grid.Head[1..4]);
    }
}
