using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using CsCheck;
using InscriptionLab.Likeness;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

public sealed class MarkLikenessTests
{
    private const int Hands = 24;
    private const int Words = 6;
    private const int WordsPerHand = 2;
    private const int Occasions = 3;
    private const int WordLength = 9;

    /// <summary>
    /// Mean average precision (Manning, Raghavan and Schütze, Introduction to Information Retrieval, 2008, section 8.4) on rendered marks whose
    /// hand and word are known: 24 hands, each cutting 2 of 6 words on 3 occasions; every word is cut by 8 hands, so words alone do not give it away.
    /// The floors lie below what was measured and may only be raised.
    /// </summary>
    [Fact]
    public void Marks_of_one_hand_are_found_among_the_same_words_of_other_hands()
    {
        var marks = Rendered(1000, Hands, Occasions);
        var index = new MarkIndex([.. marks.Select((mark, number) => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(number, mark.Embedding))]);

        var sameMark = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand && query.Word == other.Word);
        var sameHand = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand);
        var otherWord = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand && query.Word != other.Word, (query, other) => query.Word != other.Word);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{marks.Length} marks: mean average precision {sameMark:0.000} for the same mark cut again, {sameHand:0.000} for every mark of the hand, {otherWord:0.000} for other words of the hand among other words (chance about {3.0 / 120:0.000})"));

        Assert.True(sameMark > 0.9, FormattableString.Invariant($"{sameMark:0.000}"));
        Assert.True(otherWord > 0.2, FormattableString.Invariant($"{otherWord:0.000}"));
    }

    /// <summary>The same on 120 hands that nothing was chosen on, each cutting 2 of the 6 words on 5 occasions; by hand, for it takes a minute.</summary>
    [Fact(Explicit = true)]
    public void Many_more_hands_are_told_apart()
    {
        const int MoreHands = 120;
        const int MoreOccasions = 5;
        var marks = Rendered(20_000, MoreHands, MoreOccasions);
        var index = new MarkIndex([.. marks.Select((mark, number) => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(number, mark.Embedding))]);

        var sameMark = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand && query.Word == other.Word);
        var sameHand = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand);
        var otherWord = MeanAveragePrecision(marks, index, (query, other) => query.Hand == other.Hand && query.Word != other.Word, (query, other) => query.Word != other.Word);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{marks.Length} marks of {MoreHands} hands: mean average precision {sameMark:0.000} for the same mark cut again ({MoreOccasions - 1} of {marks.Length - 1}), {sameHand:0.000} for every mark of the hand ({(WordsPerHand * MoreOccasions) - 1} of {marks.Length - 1}), {otherWord:0.000} for other words of the hand among other words"));

        Assert.True(sameMark > 0.7, FormattableString.Invariant($"{sameMark:0.000}"));
    }

    [Fact]
    public void A_mark_is_most_like_itself_and_embedding_repeats()
    {
        var picture = new Hand(5).Cut("TRECKSHOW", 1);
        var embedder = new MarkEmbedder(new MarkEmbedderOptions());
        var embedding = embedder.Embed(picture);

        Assert.Equal(embedding, embedder.Embed(picture));
        Assert.Equal(embedder.Dimensions, embedding.Length);
        Assert.Equal(1, new MarkIndex([KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(7, embedding)]).Nearest(embedding, 1)[0].Likeness, 5);
    }

    [Fact]
    public void The_scalar_product_of_vectors_is_the_plain_one() =>
        Gen.Int[0, 600].SelectMany(length => Gen.Select(Gen.SByte[-127, 127].Array[length], Gen.SByte[-127, 127].Array[length]))
            .Sample((left, right) => MarkIndex.Dot(left, right) == left.Zip(right, (a, b) => a * b).Sum());

    [Fact]
    public void The_nearest_are_those_that_sorting_all_would_give()
    {
        var random = new Random(3);
        var vectors = Enumerable.Range(0, 500).Select(number => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(number, Enumerable.Range(0, 48).Select(_ => (sbyte)random.Next(-127, 128)).ToArray())).ToList();
        var query = vectors[17].Value;

        var found = new MarkIndex(vectors).Nearest(query.Span, 20);

        var sorted = vectors.OrderByDescending(vector => Cosine(query.Span, vector.Value.Span)).Take(20).Select(vector => vector.Key);
        Assert.Equal(sorted, found.Select(like => like.Id));

        static double Cosine(ReadOnlySpan<sbyte> left, ReadOnlySpan<sbyte> right) => MarkIndex.Dot(left, right) / Math.Sqrt((double)MarkIndex.Dot(left, left) * MarkIndex.Dot(right, right));
    }

    private static ImmutableArray<(int Hand, int Word, sbyte[] Embedding)> Rendered(int firstHand, int hands, int occasions)
    {
        var random = new Random(20);
        var words = Enumerable.Range(0, Words).Select(_ => string.Concat(Enumerable.Range(0, WordLength).Select(_ => Hand.Letters[random.Next(Hand.Letters.Length)]))).ToList();
        var embedder = new MarkEmbedder(new MarkEmbedderOptions());
        var marks = ImmutableArray.CreateBuilder<(int, int, sbyte[])>();
        for (var hand = 0; hand < hands; hand++)
        {
            var engraver = new Hand(firstHand + hand);
            for (var turn = 0; turn < WordsPerHand; turn++)
            {
                var word = (hand + (turn * (1 + (hand / Words % 5)))) % Words;
                for (var occasion = 0; occasion < occasions; occasion++)
                {
                    marks.Add((hand, word, embedder.Embed(engraver.Cut(words[word], ((firstHand - 1000 + hand) * 100) + (turn * 10) + occasion))));
                }
            }
        }

        return marks.ToImmutable();
    }

    private static double MeanAveragePrecision(
        ImmutableArray<(int Hand, int Word, sbyte[] Embedding)> marks,
        MarkIndex index,
        Func<(int Hand, int Word, sbyte[] Embedding), (int Hand, int Word, sbyte[] Embedding), bool> isRelevant,
        Func<(int Hand, int Word, sbyte[] Embedding), (int Hand, int Word, sbyte[] Embedding), bool>? counts = null)
    {
        double sum = 0;
        for (var query = 0; query < marks.Length; query++)
        {
            var mark = marks[query];
            var ranked = index.Nearest(mark.Embedding, marks.Length).Where(like => like.Id != query).Select(like => marks[(int)like.Id]).Where(other => counts?.Invoke(mark, other) ?? true);
            double precision = 0;
            var (rank, found) = (0, 0);
            foreach (var other in ranked)
            {
                rank++;
                if (isRelevant(mark, other))
                {
                    found++;
                    precision += (double)found / rank;
                }
            }

            sum += precision / Math.Max(1, found);
        }

        return sum / marks.Length;
    }
}
