using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Likeness;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

public sealed class MarkGroupsTests
{
    /// <summary>
    /// Groups against truth on rendered marks (hand and word known), by the adjusted Rand index (Hubert and Arabie, Journal of Classification 2,
    /// 1985). The threshold was chosen on hands 5000 to 5019 (index 0.88, 0.98, 0.92 at 0.94, 0.95, 0.96); the hands here are others. The floor lies below what was measured and may only be raised.
    /// </summary>
    [Fact]
    public void Groups_follow_hand_and_word_on_marks_that_were_not_used_to_choose_the_threshold()
    {
        var (truth, embeddings) = Rendered(9000, 20);
        var index = AdjustedRand(truth, [.. MarkGroups.Of(embeddings)]);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{truth.Count} marks of {truth.Distinct().Count()} kinds: adjusted Rand index {index:0.000}"));
        Assert.True(index > 0.8, FormattableString.Invariant($"{index:0.000}"));
    }

    [Fact]
    public void The_adjusted_rand_index_is_1_for_equal_groups_and_about_0_for_random_ones()
    {
        var random = new Random(1);
        var truth = Enumerable.Range(0, 2000).Select(number => number % 20).ToList();

        Assert.Equal(1, AdjustedRand(truth, [.. truth.Select(group => group + 100)]), 9);
        Assert.Equal(0, AdjustedRand(truth, [.. truth.Select(_ => random.Next(20))]), 2);
    }

    private static (List<int> Truth, List<ReadOnlyMemory<sbyte>> Embeddings) Rendered(int firstHand, int hands)
    {
        string[] words = ["BROCKWEL", "TENSHORD", "WALTERSON"];
        var embedder = new MarkEmbedder(new MarkEmbedderOptions());
        var truth = new List<int>();
        var embeddings = new List<ReadOnlyMemory<sbyte>>();
        for (var hand = 0; hand < hands; hand++)
        {
            var engraver = new Hand(firstHand + hand);
            for (var occasion = 0; occasion < 5; occasion++)
            {
                truth.Add(hand);
                embeddings.Add(embedder.Embed(engraver.Cut(words[hand % words.Length], (firstHand * 10) + (hand * 100) + occasion)));
            }
        }

        return (truth, embeddings);
    }

    private static double AdjustedRand(List<int> truth, List<int> groups)
    {
        static double Pairs(double count) => count * (count - 1) / 2;
        var both = truth.Zip(groups).CountBy(pair => pair).Sum(cell => Pairs(cell.Value));
        var one = truth.CountBy(group => group).Sum(cell => Pairs(cell.Value));
        var two = groups.CountBy(group => group).Sum(cell => Pairs(cell.Value));
        var expected = one * two / Pairs(truth.Count);
        return (both - expected) / (((one + two) / 2) - expected);
    }
}
