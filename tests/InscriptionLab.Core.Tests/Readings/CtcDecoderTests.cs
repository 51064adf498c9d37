using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class CtcDecoderTests
{
    private static readonly CtcBeamOptions Whole = new() { Width = 1000, Take = 1000, ClassFloor = 1e-30 };

    [Fact]
    public void A_wide_beam_finds_every_text_in_order_with_its_exact_probability() => EveryPath.Matrices.Sample(posteriors =>
    {
        var expected = EveryPath.Sum(posteriors);
        var found = CtcDecoder.NBest(posteriors, Whole);
        return found.Length == expected.Count
            && found.All(hypothesis => Math.Abs(Math.Exp(hypothesis.LogProbability) - expected[hypothesis.Text]) < 1e-6)
            && found.Zip(found.Skip(1)).All(pair => pair.First.LogProbability >= pair.Second.LogProbability);
    });

    [Fact]
    public void The_default_beam_finds_the_most_probable_text_of_small_lines() => EveryPath.Matrices.Sample(posteriors =>
        Math.Abs(Math.Exp(CtcDecoder.NBest(posteriors)[0].LogProbability) - EveryPath.Sum(posteriors).Values.Max()) < 1e-6);

    /// <summary>The case of Graves et al., ICML 2006, section 3.2 (from memory): the best single path is all blanks (0.36), yet the summed probability of one letter is larger (0.64).</summary>
    [Fact]
    public void Summing_over_paths_finds_a_letter_where_the_best_path_is_blank()
    {
        var posteriors = EveryPath.Of([0.6, 0.4, 0], [0.6, 0.4, 0]);

        Assert.Equal(string.Empty, CtcDecoder.BestPath(posteriors));
        var best = CtcDecoder.NBest(posteriors)[0];
        Assert.Equal("l", best.Text);
        Assert.Equal(0.64, Math.Exp(best.LogProbability), 6);
    }

    /// <summary>As above, behind an l that three frames show: the path that stays on it is the one that a narrow beam must keep.</summary>
    [Fact]
    public void A_narrow_beam_stays_on_a_letter_that_many_frames_show()
    {
        var posteriors = EveryPath.Of([0.005, 0.98, 0.015], [0.005, 0.98, 0.015], [0.005, 0.98, 0.015], [0.6, 0, 0.4], [0.6, 0, 0.4]);

        Assert.Equal("l", CtcDecoder.BestPath(posteriors));
        var best = CtcDecoder.NBest(posteriors, new CtcBeamOptions { Width = 2 })[0];
        Assert.Equal("lo", best.Text);
        Assert.Equal(EveryPath.Sum(posteriors)["lo"], Math.Exp(best.LogProbability), 6);
    }

    [Fact]
    public void The_best_path_joins_repeats_and_drops_blanks() =>
        Assert.Equal("llo", CtcDecoder.BestPath(EveryPath.Of([0, 1, 0], [0, 1, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 1])));

    [Fact]
    public void A_line_without_frames_spells_nothing() =>
        Assert.Equal([new CtcHypothesis(string.Empty, 0)], CtcDecoder.NBest(new LinePosteriors(EveryPath.Classes, 0, [])).ToArray());
}
