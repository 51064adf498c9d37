using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class LetterWeigherTests
{
    private static readonly LetterWeigherOptions All = new() { RivalFloor = 0, ListFloor = 0 };

    [Fact]
    public void Each_letter_shares_the_summed_paths_of_its_rivals() => EveryPath.Matrices.Sample(posteriors =>
    {
        var texts = EveryPath.Sum(posteriors);
        var best = CtcDecoder.NBest(posteriors)[0].Text;
        var letters = LetterWeigher.Weigh(posteriors, best, All);
        return letters.Select((letter, place) => (letter, place)).All(entry =>
        {
            var expected = Rivals(best, entry.place).GroupBy(rival => rival.Characters)
                .ToDictionary(group => group.Key, group => group.Sum(rival => texts.GetValueOrDefault(rival.Text)));
            var sum = expected.Values.Sum();
            return entry.letter.Candidates.All(candidate => Math.Abs(candidate.Probability.Value - (expected[candidate.Character] / sum)) < 1e-6);
        });
    });

    [Fact]
    public void The_candidates_of_a_letter_sum_to_one() => EveryPath.Matrices.Sample(posteriors =>
        LetterWeigher.Weigh(posteriors, CtcDecoder.NBest(posteriors)[0].Text, All)
            .All(letter => Math.Abs(letter.Candidates.Sum(candidate => candidate.Probability.Value) - 1) < 1e-6));

    [Fact]
    public void A_letter_that_may_be_doubled_says_so()
    {
        var posteriors = EveryPath.Of([0, 1, 0], [0.4, 0.6, 0], [0, 1, 0], [0, 0, 1]);
        var letters = LetterWeigher.Weigh(posteriors, "lo");

        Assert.Equal("l", letters[0].Candidates[0].Character);
        Assert.Equal(0.6, letters[0].Candidates[0].Probability.Value, 6);
        Assert.Equal("ll", letters[0].Candidates[1].Character);
        Assert.Equal(0.4, letters[0].Candidates[1].Probability.Value, 6);
        Assert.Equal(1, letters[1].Candidates[0].Probability.Value, 6);
    }

    [Fact]
    public void Frames_of_a_letter_are_where_it_is_shown()
    {
        var posteriors = EveryPath.Of([1, 0, 0], [0, 1, 0], [0, 1, 0], [0, 1, 0], [1, 0, 0], [0, 0, 1]);
        var letters = LetterWeigher.Weigh(posteriors, "lo");

        Assert.Equal((1.0, 2.0, 3.0), (letters[0].StartFrame, letters[0].CentreFrame, letters[0].EndFrame));
        Assert.Equal((5.0, 5.0, 5.0), (letters[1].StartFrame, letters[1].CentreFrame, letters[1].EndFrame));
    }

    [Fact]
    public void Letters_stand_in_order() => EveryPath.Matrices.Sample(posteriors =>
    {
        var letters = LetterWeigher.Weigh(posteriors, CtcDecoder.NBest(posteriors)[0].Text, All);
        return letters.All(letter => letter.StartFrame <= letter.EndFrame + 1e-6)
            && letters.Zip(letters.Skip(1)).All(pair => pair.First.EndFrame < pair.Second.StartFrame);
    });

    [Fact]
    public void A_spelling_that_cannot_be_laid_over_the_line_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LetterWeigher.Weigh(EveryPath.Of([1, 1, 1]), "lo"));
        Assert.Throws<ArgumentException>(() => LetterWeigher.Weigh(EveryPath.Of([1, 1, 1]), "x"));
    }

    /// <summary>Every text in which place <paramref name="place"/> is read otherwise, written out by hand.</summary>
    private static IEnumerable<(string Characters, string Text)> Rivals(string text, int place)
    {
        var (head, own, tail) = (text[..place], text[place], text[(place + 1)..]);
        yield return (own.ToString(), text);
        yield return (string.Empty, head + tail);
        foreach (var first in "lo")
        {
            if (first != own)
            {
                yield return (first.ToString(), head + first + tail);
                if (tail.Length > 0 && first != tail[0])
                {
                    yield return (first.ToString(), head + first + tail[1..]);
                }

                if (head.Length > 0 && first != head[^1])
                {
                    yield return (string.Empty, head[..^1] + first + tail);
                }
            }

            foreach (var second in "lo")
            {
                if (place == 0 || !(second == own && first != own))
                {
                    yield return ($"{first}{second}", head + first + second + tail);
                }
            }
        }
    }
}
