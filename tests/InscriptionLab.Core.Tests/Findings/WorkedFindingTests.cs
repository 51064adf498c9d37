using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Findings;

/// <summary>The finding that DEVELOPERS.md works by hand, number for number.</summary>
public sealed class WorkedFindingTests
{
    private static readonly LineReading Line = Fabricated.Line("Tollivor LONDON", 0.98).With(6, 0.96, ("c", 0.02), ("e", 0.008));

    private static readonly ReadingComparison Comparison = new Comparer(Fabricated.List("Tolliver", "Fennimarch")).Compare(Fabricated.Of(Line));

    [Fact]
    public void The_letter_costs_its_ratio_short_of_one()
    {
        var nearest = Comparison.Nearest[0];
        var difference = Assert.Single(nearest.Differences);

        Assert.Equal(("Tolliver", "e", "o", "o", 6), (nearest.Form.Form, difference.Attested, difference.Read, difference.Rival, difference.LetterIndex));
        Assert.Equal(Math.Log10(0.008 / 0.96), difference.Log10Ratio, 9);
        Assert.Equal(-2.079, difference.Log10Ratio, 3);
        Assert.Equal(0.9917, difference.Probability.Value, 4);
        Assert.Equal(0.9917, nearest.Distance, 4);
        Assert.Equal(0.1240, nearest.RelativeDistance, 4);
        Assert.Equal(8, nearest.Letters);
    }

    [Fact]
    public void The_other_letters_are_ninety_eight_to_one()
    {
        var nearest = Comparison.Nearest[0];

        Assert.Equal(7, nearest.Agreements.Length);
        Assert.All(nearest.Agreements, agreement =>
        {
            Assert.Equal(98, Math.Pow(10, agreement.Log10Ratio), 6);
            Assert.Equal(0.0101, agreement.Probability.Value, 4);
        });
        Assert.Equal(0.0077, nearest.Agreement.Value, 4);
    }

    [Fact]
    public void The_form_stands_at_five_and_a_half_letters_and_the_other_far_behind()
    {
        var options = new ComparerOptions();
        double Standing(NearestForm form) => form.Letters - (options.LettersPerDifference * form.Distance);

        Assert.Equal(5.52, Standing(Comparison.Nearest[0]), 2);
        Assert.All(Comparison.Nearest.Skip(1), form => Assert.True(Standing(form) < 0));
    }

    [Fact]
    public void The_finding_is_that_it_differs_with_a_ratio_of_a_hundred_and_twenty()
    {
        var finding = new Judge().Decide(Comparison);

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Equal(
            [
                "Line 1 is read 'Tollivor' where it was laid beside the list.",
                "The nearest form is 'Tolliver', attested for Tolliver.",
                "Letter 7 of line 1: the form has 'e', cut is 'o'; the picture is 120 times more probable with 'o' than with 'e' (moderately strong support).",
                "'LONDON' on the same line is not part of the form and was not compared.",
            ],
            finding.Reasons.ToArray());
    }

    [Fact]
    public void With_a_little_more_doubt_the_photo_cannot_decide()
    {
        var line = Line.With(6, 0.96, ("c", 0.02), ("e", 0.0097));

        Assert.Equal(FindingOutcome.Undecided, new Judge().Decide(new Comparer(Fabricated.List("Tolliver")).Compare(Fabricated.Of(line))).Outcome);
    }

    /// <summary>Ten pieces of the house are listed, all spelt alike.</summary>
    [Fact]
    public void The_weighing_mixes_four_rows_and_is_held_to_what_ten_pieces_can_show()
    {
        var report = Weigh(10, "3/17");
        var spelling = Assert.Single(report.Items).Weight;

        Assert.Equal("other", spelling.Observation);
        Assert.Equal((0.0892, 0.3992, 0.2015), (Math.Round(spelling.House, 4), Math.Round(spelling.Period, 4), Math.Round(spelling.Modern, 4)));
        Assert.Equal([1 / 4.48, 1 / 2.26, 1.98], report.Ratios.Select(ratio => Math.Pow(10, ratio.Log10Ratio)), new Near(0.002));
        Assert.Equal(0.060, report.Posterior!.House, 3);
        Assert.Contains(report.Sentences, sentence => sentence.Contains("3/17: 6 % that the house named had it cut, 62 % that another had it cut in the house's time, 32 % that it was cut for a modern decorative piece", StringComparison.Ordinal));
    }

    [Fact]
    public void One_row_of_the_list_bears_no_ratio() => Assert.All(Weigh(1, "3/17").Ratios, ratio => Assert.Equal((0, true), (ratio.Log10Ratio, ratio.IsCapped)));

    private static EvidenceReport Weigh(int rows, string prior)
    {
        var list = Comparison.References;
        var more = Enumerable.Range(2, rows - 1).Select(piece => list.Forms[0] with { Note = $"piece {piece}" });
        return new EvidenceWeigher(list with { Forms = [.. list.Forms, .. more] }).Weigh(Comparison.Reading, new Judge().Decide(Comparison), Circumstances.None with { Prior = PriorOdds.Parse(prior) });
    }

    private sealed class Near(double off) : IEqualityComparer<double>
    {
        public bool Equals(double first, double second) => Math.Abs(first - second) <= off;

        public int GetHashCode(double number) => 0;
    }
}
