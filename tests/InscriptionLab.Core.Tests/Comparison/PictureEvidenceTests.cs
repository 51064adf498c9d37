using System;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

public sealed class PictureEvidenceTests
{
    private static NearestForm Nearest(LineReading line, params string[] forms) => new Comparer(Fabricated.List(forms)).Compare(Fabricated.Of(line)).Nearest[0];

    private static FindingOutcome Outcome(LineReading line, params string[] forms) => new Judge().Decide(new Comparer(Fabricated.List(forms)).Compare(Fabricated.Of(line))).Outcome;

    [Fact]
    public void A_blurred_letter_that_a_reader_overstates_is_left_open_by_the_frames()
    {
        // The list of alternatives is sure of the o; the frames are not.
        var line = Fabricated.Line("Tollivor", Fabricated.Sure, Frames.Of("Tollivor", (6, [("o", 0.5), ("e", 0.5)])));
        var nearest = Nearest(line, "Tolliver");

        var difference = Assert.Single(nearest.Differences);
        Assert.Equal(0, difference.Log10Ratio, 3);
        Assert.Equal(0.5, difference.Probability.Value, 3);
        Assert.Equal(0, nearest.LogLikelihoodRatio!.Value, 3);
        Assert.Equal(FindingOutcome.Undecided, Outcome(line, "Tolliver"));
    }

    [Fact]
    public void Sure_frames_do_not_overrule_alternatives_that_are_in_doubt()
    {
        var line = Fabricated.Line("Tollivor", Fabricated.Sure, Frames.Of("Tollivor")).With(6, 0.6, ("e", 0.4));

        Assert.Equal(Math.Log10(0.4 / 0.6), Assert.Single(Nearest(line, "Tolliver").Differences).Log10Ratio, 6);
        Assert.Equal(FindingOutcome.Undecided, Outcome(line, "Tolliver"));
    }

    [Theory]
    [InlineData("Tollivor", "Tolliver")]
    [InlineData("TOLLIVOR LONDON", "Tolliver")]
    [InlineData("Wm. Hathersedtge LONDON", "Wm. Hathersedge")]
    [InlineData("Thos. Barckwell", "Thos. Brackwell")]
    [InlineData("Pellowic", "Pellowick")]
    public void Sure_frames_and_sure_letters_differ(string read, string form)
    {
        var line = Fabricated.Line(read, Fabricated.Sure, Frames.Of(read));
        var nearest = Nearest(line, form);

        Assert.Equal(FindingOutcome.Differs, Outcome(line, form));
        Assert.True(nearest.LogLikelihoodRatio < Math.Log(1e-4));
        Assert.All(nearest.SpellingDifferences, difference => Assert.True(difference.Log10Ratio <= -2));
    }

    [Fact]
    public void The_ratio_of_a_form_is_that_of_the_whole_line_with_the_form_in_its_place()
    {
        var posteriors = Frames.Of("TOLLIVOR LONDON", (6, [("O", 0.7), ("E", 0.3)]), (3, [("L", 0.9), ("I", 0.1)]));
        var line = Fabricated.Line("TOLLIVOR LONDON", Fabricated.Sure, posteriors);

        var expected = CtcScorer.LogProbability(posteriors, "TOLLIVER LONDON")!.Value - CtcScorer.LogProbability(posteriors, "TOLLIVOR LONDON")!.Value;
        Assert.Equal(Math.Log(0.3 / 0.7), expected, 3);
        Assert.Equal(expected, Nearest(line, "Tolliver").LogLikelihoodRatio!.Value, 12);
    }

    [Fact]
    public void A_double_letter_that_the_frames_cannot_part_is_left_open()
    {
        // Between the two frames of the one l that was read, the blank is as likely as not: one l or two.
        var posteriors = Frames.Of("Tolliver", (3, [("l", 0.5), ("", 0.5)]));
        var line = Fabricated.Line("Toliver", Fabricated.Sure, posteriors);

        Assert.Equal(FindingOutcome.Undecided, Outcome(line, "Tolliver"));
        Assert.Equal(0, Assert.Single(Nearest(line, "Tolliver").Differences).Log10Ratio, 3);
    }

    [Fact]
    public void A_letter_that_the_reader_has_no_class_for_is_never_held_against_the_piece()
    {
        var line = Fabricated.Line("Aubrelle", Fabricated.Sure, Frames.Of("Aubrelle"));

        Assert.True(Assert.Single(Nearest(line, "Aubrellé").Differences).IsBeyondReader);
        Assert.Equal(FindingOutcome.Undecided, Outcome(line, "Aubrellé"));
    }

    [Fact]
    public void Without_posteriors_there_is_no_ratio_of_the_whole_form() => Assert.Null(Nearest(Fabricated.Line("Tolliver"), "Tolliver").LogLikelihoodRatio);

    [Fact]
    public void A_form_that_is_read_exactly_has_the_ratio_one()
    {
        var line = Fabricated.Line("Tolliver LONDON", Fabricated.Sure, Frames.Of("Tolliver LONDON"));

        Assert.Equal(0, Nearest(line, "Tolliver").LogLikelihoodRatio);
        Assert.Equal(FindingOutcome.Agrees, Outcome(line, "Tolliver"));
    }

    [Fact]
    public void A_name_over_two_lines_sums_the_ratios_of_both()
    {
        var first = Fabricated.Line("Harwick &", Fabricated.Sure, Frames.Of("Harwick &", (2, [("r", 0.6), ("n", 0.4)])));
        var second = Fabricated.Line("Penhale", Fabricated.Sure, Frames.Of("Penhale", (4, [("a", 0.8), ("o", 0.2)])));
        var nearest = new Comparer(Fabricated.List("Hanwick & Penhole")).Compare(Fabricated.Of(first, second)).Nearest[0];

        Assert.Equal(Math.Log(0.4 / 0.6) + Math.Log(0.2 / 0.8), nearest.LogLikelihoodRatio!.Value, 3);
        Assert.Equal([0, 1], nearest.Differences.Select(difference => difference.LineIndex));
    }
}
