using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class CtcScorerTests
{
    private const double Close = 1e-6;

    [Fact]
    public void The_forward_sum_equals_the_sum_over_every_path() => EveryPath.Matrices.Sample(posteriors =>
        EveryPath.Sum(posteriors).All(sum => Math.Abs(Math.Exp(CtcScorer.LogProbability(posteriors, sum.Key)!.Value) - sum.Value) < Close));

    [Fact]
    public void The_probabilities_of_all_texts_sum_to_one() => EveryPath.Matrices.Sample(posteriors =>
    {
        var texts = EveryPath.Sum(posteriors).Keys.ToList();
        return Math.Abs(CtcScorer.LogProbabilities(posteriors, texts).Sum(logarithm => Math.Exp(logarithm!.Value)) - 1) < Close;
    });

    [Fact]
    public void Scoring_many_texts_at_once_changes_none_of_them() => EveryPath.Matrices.Sample(posteriors =>
    {
        var texts = EveryPath.Sum(posteriors).Keys.Append("nothing").Append("ooooooooo").Reverse().ToList();
        return CtcScorer.LogProbabilities(posteriors, texts).SequenceEqual(texts.Select(text => CtcScorer.LogProbability(posteriors, text)));
    });

    /// <summary>Worked by hand: two frames at even odds of blank and "a": P("a") = aa + a- + -a = 3/4, P("") = 1/4.</summary>
    [Fact]
    public void Two_even_frames_spell_one_letter_with_three_quarters()
    {
        var half = (float)Math.Log(0.5);
        var posteriors = new LinePosteriors(["", "a"], 0, [half, half, half, half]);

        Assert.Equal(Math.Log(0.75), CtcScorer.LogProbability(posteriors, "a")!.Value, 6);
        Assert.Equal(Math.Log(0.25), CtcScorer.LogProbability(posteriors, string.Empty)!.Value, 6);
    }

    [Fact]
    public void A_doubled_letter_needs_a_blank_between()
    {
        var withBlank = EveryPath.Of([0, 1, 0], [1, 0, 0], [0, 1, 0]);
        var withoutBlank = EveryPath.Of([0, 1, 0], [0, 1, 0], [0, 1, 0]);

        Assert.Equal(0, CtcScorer.LogProbability(withBlank, "ll")!.Value, 9);
        Assert.Equal(double.NegativeInfinity, CtcScorer.LogProbability(withBlank, "l"));
        Assert.Equal(0, CtcScorer.LogProbability(withoutBlank, "l")!.Value, 9);
        Assert.Equal(double.NegativeInfinity, CtcScorer.LogProbability(withoutBlank, "ll"));
    }

    [Fact]
    public void A_letter_without_a_class_gives_no_score() =>
        Assert.Null(CtcScorer.LogProbability(EveryPath.Of([1, 1, 1]), "lx"));

    [Fact]
    public void A_text_longer_than_the_frames_is_impossible() =>
        Assert.Equal(double.NegativeInfinity, CtcScorer.LogProbability(EveryPath.Of([1, 1, 1]), "lo"));

    [Fact]
    public void A_line_without_frames_spells_nothing_with_certainty()
    {
        var posteriors = new LinePosteriors(EveryPath.Classes, 0, []);

        Assert.Equal(0, CtcScorer.LogProbability(posteriors, string.Empty));
        Assert.Equal(double.NegativeInfinity, CtcScorer.LogProbability(posteriors, "l"));
    }

    [Fact]
    public void A_letter_of_two_code_points_is_one_letter()
    {
        var posteriors = new LinePosteriors(["", "e\u0301"], 0, [float.NegativeInfinity, 0]);

        Assert.Equal(0, CtcScorer.LogProbability(posteriors, "e\u0301"));
    }

    [Fact]
    public void Thousands_of_frames_do_not_underflow()
    {
        var numbers = new float[EveryPath.Classes.Length * 4000];
        Array.Fill(numbers, (float)-Math.Log(EveryPath.Classes.Length));
        var logarithm = CtcScorer.LogProbability(new LinePosteriors(EveryPath.Classes, 0, numbers), "lo")!.Value;

        Assert.True(double.IsFinite(logarithm) && logarithm < -4000);
    }
}
