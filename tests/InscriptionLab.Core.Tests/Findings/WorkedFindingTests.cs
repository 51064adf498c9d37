using System;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
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
}
