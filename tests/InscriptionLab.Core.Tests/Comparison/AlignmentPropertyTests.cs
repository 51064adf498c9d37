using System;
using System.Linq;
using CsCheck;
using F23.StringSimilarity;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

public sealed class AlignmentPropertyTests
{
    private static readonly ComparerOptions Options = new();

    /// <summary>The least number of letters replaced, added, left out or swapped with a neighbour, no part edited twice, by a library that has nothing to do with this program.</summary>
    private static readonly OptimalStringAlignment Published = new();

    /// <summary>Single words without a space, so that the form is laid over the whole of them.</summary>
    private static readonly Gen<string> Word = Gen.String[Gen.Char["abcde"], 1, 9];

    private static double Distance(string read, string form, double probability = 1) => NearestTo(Fabricated.Of(Fabricated.Line(read, probability)), form).Distance;

    private static NearestForm NearestTo(Reading reading, string form) => Assert.Single(new Comparer(Fabricated.List(form), Options).Compare(reading).Nearest);

    private static bool Meets(string first, string second) => first.Intersect(second).Any();

    [Fact]
    public void The_distance_of_certain_words_is_the_optimal_string_alignment_but_for_overlooked_letters() =>
        Gen.Select(Word, Word).Where((read, form) => Meets(Pairs(read), Pairs(form))).Sample((read, form) =>
        {
            // A letter that the reading lacks costs 1 - 0.005/0.995, any other difference 1 - 0.0001, so that nine of them stay within 0.05 of a whole number.
            var nearest = NearestTo(Fabricated.Of(Fabricated.Line(read, 1)), form);
            var swaps = nearest.Differences.Count(difference => difference.Kind == DifferenceKind.Swapped) / 2;

            Assert.Equal(Published.Distance(read, form), nearest.Distance, 0.05);
            Assert.Equal(nearest.SpellingDifferences.Length - swaps, nearest.Distance, 0.05);
        });

    [Fact]
    public void The_distance_is_zero_for_the_same_word_and_for_no_other() =>
        Gen.Select(Word, Word).Where((read, form) => Meets(Pairs(read), Pairs(form))).Sample((read, form) => Assert.Equal(read == form, Distance(read, form) < 0.5));

    [Fact]
    public void The_cost_is_the_same_in_both_directions_but_for_overlooked_letters() =>
        Gen.Select(Word, Word).Where((read, form) => Meets(Pairs(read), Pairs(form))).Sample((read, form) => Assert.Equal(Distance(read, form), Distance(form, read), 0.06));

    [Fact]
    public void Less_certain_letters_never_make_a_distance_larger() =>
        Gen.Select(Word, Word, Gen.Double[0.5, 1]).Where((read, form, _) => Meets(Pairs(read), Pairs(form))).Sample((read, form, probability) =>
            Assert.True(Distance(read, form, probability) <= Distance(read, form) + 1e-9));

    [Fact]
    public void Words_before_and_behind_never_make_a_distance_larger() =>
        Gen.Select(Word, Word).Where((read, form) => Meets(Pairs(read), Pairs(form))).Sample((read, form) =>
            Assert.True(Distance($"XXXX {read} YYYYY", form) <= Distance(read, form) + 1e-9));

    [Fact]
    public void Differences_made_good_in_the_reading_spell_the_form() =>
        Gen.Select(Word, Word).Where((read, form) => Meets(Pairs(read), Pairs(form))).Sample((read, form) =>
        {
            var nearest = NearestTo(Fabricated.Of(Fabricated.Line(read, 1)), form);
            var spelt = string.Concat(Enumerable.Range(0, read.Length + 1).Select(index =>
            {
                var here = nearest.Differences.Where(difference => difference.LetterIndex == index).ToArray();
                var added = string.Concat(here.Where(difference => difference.Read.Length == 0).Select(difference => difference.Attested));
                var own = index < read.Length ? here.FirstOrDefault(difference => difference.Read.Length > 0)?.Attested ?? read[index..(index + 1)] : string.Empty;
                return added + own;
            }));

            Assert.Equal(form, spelt);
        });

    private static string Pairs(string word) => string.Concat($" {word} ".Zip($"{word} ", (first, second) => (char)((first * 256) + second)));
}
