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
    /// 1985). The threshold was chosen on hands 5000 to 5149 (index 0.89, 0.94, 0.93 at 0.94, 0.945, 0.95); the hands here are others. The floor lies below what was measured and may only be raised.
    /// </summary>
    [Fact]
    public void Groups_follow_hand_and_word_on_marks_that_were_not_used_to_choose_the_threshold()
    {
        var (truth, embeddings) = Rendered(9000, 20);
        var index = AdjustedRand(truth, [.. MarkGroups.Of(embeddings)]);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{truth.Count} marks of {truth.Distinct().Count()} kinds: adjusted Rand index {index:0.000}"));
        Assert.True(index > 0.8, FormattableString.Invariant($"{index:0.000}"));
    }

    /// <summary>
    /// The same on 150 hands, so that each word is cut by 50 hands that a false join can run together; with it how many pairs that were joined
    /// belong together, and how many that belong together were joined. By hand, for it takes a minute.
    /// </summary>
    [Fact(Explicit = true)]
    public void Groups_of_many_hands()
    {
        var (truth, embeddings) = Rendered(30_000, 150);
        List<int> groups = [.. MarkGroups.Of(embeddings)];
        var (both, joined, together) = (0, 0, 0);
        for (var one = 0; one < truth.Count; one++)
        {
            for (var other = 0; other < one; other++)
            {
                both += groups[one] == groups[other] && truth[one] == truth[other] ? 1 : 0;
                joined += groups[one] == groups[other] ? 1 : 0;
                together += truth[one] == truth[other] ? 1 : 0;
            }
        }

        var index = AdjustedRand(truth, groups);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{truth.Count} marks of {truth.Distinct().Count()} kinds in {groups.Distinct().Count()} groups: adjusted Rand index {index:0.000}; of {joined} joined pairs {both} belong together, of {together} that do {both} are joined"));
        Assert.True(index > 0.85, FormattableString.Invariant($"{index:0.000}"));
    }

    /// <summary>Two clouds of marks with a thin bridge between them: single likenesses would run them together.</summary>
    [Fact]
    public void A_mark_between_two_groups_does_not_join_them_and_the_order_of_marks_does_not_matter()
    {
        static ReadOnlyMemory<sbyte> At(double degrees) => new sbyte[] { (sbyte)Math.Round(120 * Math.Cos(degrees * Math.PI / 180)), (sbyte)Math.Round(120 * Math.Sin(degrees * Math.PI / 180)) };
        double[] angles = [0, 2, 4, 6, 20, 34, 36, 38, 40];
        const float Threshold = 0.96f; // 16.3 degrees

        var groups = MarkGroups.Of([.. angles.Select(At)], Threshold);
        var turned = MarkGroups.Of([.. angles.Reverse().Select(At)], Threshold);

        Assert.Equal([0, 0, 0, 0], groups[..4]);
        Assert.Equal([5, 5, 5, 5], groups[5..].Select(group => Math.Max(group, 5)));
        Assert.NotEqual(groups[0], groups[8]);
        Assert.Equal(groups.Distinct().Count(), turned.Distinct().Count());
    }

    /// <summary>Chains of nearest neighbours give what joining the two nearest groups again and again gives.</summary>
    [Fact]
    public void The_groups_are_those_of_plain_average_linkage()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var random = new Random(seed);
            List<ReadOnlyMemory<sbyte>> marks = [.. Enumerable.Range(0, 40).Select(number => (ReadOnlyMemory<sbyte>)Enumerable.Range(0, 12).Select(place => (sbyte)((40 * ((number % 4) == (place % 4) ? 2 : 0)) + random.Next(-45, 46))).ToArray())];
            foreach (var threshold in new[] { 0.5f, 0.7f, 0.8f })
            {
                Assert.Equal(Plain(marks, threshold), MarkGroups.Of(marks, threshold));
            }
        }
    }

    private static IEnumerable<int> Plain(List<ReadOnlyMemory<sbyte>> marks, float threshold)
    {
        double Cosine(int one, int other) => MarkIndex.Dot(marks[one].Span, marks[other].Span) / Math.Sqrt((double)MarkIndex.Dot(marks[one].Span, marks[one].Span) * MarkIndex.Dot(marks[other].Span, marks[other].Span));
        List<List<int>> groups = [.. Enumerable.Range(0, marks.Count).Select(mark => new List<int> { mark })];
        while (groups.Count > 1)
        {
            var (mean, one, other) = groups.SelectMany((left, index) => groups.Take(index).Select(right => (left.SelectMany(mark => right.Select(far => Cosine(mark, far))).Average(), left, right))).MaxBy(pair => pair.Item1);
            if (mean < threshold)
            {
                break;
            }

            one.AddRange(other);
            groups.Remove(other);
        }

        return Enumerable.Range(0, marks.Count).Select(mark => groups.Single(group => group.Contains(mark)).Min());
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
