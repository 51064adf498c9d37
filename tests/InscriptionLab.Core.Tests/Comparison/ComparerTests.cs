using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

public sealed class ComparerTests
{
    private static readonly string[] Houses = ["Tolliver", "Thos. Brackwell", "Wm. Hathersedge", "CALDERWYN & CO", "Fennimarch", "Merrowby", "Merrowby & Son", "Harwick & Penhale", "Kesselbrandt", "Pellowick"];

    private static NearestForm Nearest(Reading reading, params string[] attested) =>
        new Comparer(Fabricated.List(attested.Length > 0 ? attested : Houses)).Compare(reading).Nearest[0];

    private static (string, string, DifferenceKind, int, int)[] Differences(NearestForm form) =>
        [.. form.Differences.Select(difference => (difference.Attested, difference.Read, difference.Kind, difference.LineIndex, difference.LetterIndex))];

    [Theory]
    [InlineData("Tolliver")]
    [InlineData("Wm. Hathersedge")]
    [InlineData("CALDERWYN & CO")]
    public void The_same_letters_have_no_differences(string form)
    {
        var nearest = Nearest(Fabricated.Reading(form));

        Assert.Equal(form, nearest.Form.Form);
        Assert.Empty(nearest.Differences);
        Assert.Equal(0, nearest.Distance);
        Assert.False(nearest.IsOtherCase);
        Assert.Equal(nearest.Letters, nearest.Agreements.Length);
    }

    [Theory]
    [InlineData("Tollivor", "Tolliver", "e", "o", DifferenceKind.Replaced, 6)]
    [InlineData("Tolliveer", "Tolliver", "", "e", DifferenceKind.Added, 7)]
    [InlineData("Pellowic", "Pellowick", "k", "", DifferenceKind.Missing, 8)]
    [InlineData("CALDERWYNN & CO", "CALDERWYN & CO", "", "N", DifferenceKind.Added, 9)]
    [InlineData("Wm. Hathersedtge", "Wm. Hathersedge", "", "t", DifferenceKind.Added, 13)]
    [InlineData("Finnimarch LONDON", "Fennimarch", "e", "i", DifferenceKind.Replaced, 1)]
    [InlineData("Fennimarcb à Paris", "Fennimarch", "h", "b", DifferenceKind.Replaced, 9)]
    [InlineData("Merrowby & Sons", "Merrowby & Son", "", "s", DifferenceKind.Added, 14)]
    [InlineData("ennimarch", "Fennimarch", "F", "", DifferenceKind.Missing, 0)]
    [InlineData("XFennimarch", "Fennimarch", "", "X", DifferenceKind.Added, 0)]
    [InlineData("Fennìmarch", "Fennimarch", "i", "ì", DifferenceKind.Replaced, 4)]
    public void One_letter_other_is_one_difference_at_its_place(string read, string form, string attested, string letter, DifferenceKind kind, int index)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal(form, nearest.Form.Form);
        Assert.Equal([(attested, letter, kind, 0, index)], Differences(nearest));
        Assert.Equal(1, nearest.Distance, 0.01);
        Assert.True(nearest.Differences[0].Probability.Value > 0.99);
    }

    [Theory]
    [InlineData("Thos. Barckwell", "Thos. Brackwell", "r", "a", "a", "r", 7)]
    [InlineData("Kesselbarndt", "Kesselbrandt", "r", "a", "a", "r", 7)]
    [InlineData("Tloliver", "Tolliver", "o", "l", "l", "o", 1)]
    public void Two_letters_swapped_are_two_differences_at_the_cost_of_one(string read, string form, string firstAttested, string firstRead, string secondAttested, string secondRead, int index)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal(form, nearest.Form.Form);
        Assert.Equal(
            [(firstAttested, firstRead, DifferenceKind.Swapped, 0, index), (secondAttested, secondRead, DifferenceKind.Swapped, 0, index + 1)],
            Differences(nearest));
        Assert.Equal(1, nearest.Distance, 0.01);
    }

    [Theory]
    [InlineData("TOLLIVER", "Tolliver")]
    [InlineData("calderwyn & co", "CALDERWYN & CO")]
    [InlineData("WM. HATHERSEDGE LONDON", "Wm. Hathersedge")]
    public void Capitals_of_a_form_in_small_letters_are_the_same_spelling_in_another_case(string read, string form)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal(form, nearest.Form.Form);
        Assert.Empty(nearest.Differences);
        Assert.True(nearest.IsOtherCase);
        Assert.Equal(0, nearest.Distance);
    }

    [Fact]
    public void The_casing_of_the_list_that_is_cut_comes_first() => Assert.Equal("TOLLIVER", Nearest(Fabricated.Reading("TOLLIVER"), "Tolliver", "TOLLIVER").Form.Form);

    [Fact]
    public void A_capital_inside_a_word_is_a_difference_of_case_and_not_of_spelling()
    {
        var nearest = Nearest(Fabricated.Reading("TolLiver"));

        Assert.Equal([("l", "L", DifferenceKind.Case, 0, 3)], Differences(nearest));
        Assert.Empty(nearest.SpellingDifferences);
        Assert.Equal(0.1, nearest.Distance, 9);
    }

    [Fact]
    public void Long_s_and_raised_letters_are_another_shape_and_not_another_spelling()
    {
        var nearest = Nearest(Fabricated.Reading("Wᵐ. Hatherſedge"));

        Assert.Equal([("m", "ᵐ", DifferenceKind.LetterForm, 0, 1), ("s", "ſ", DifferenceKind.LetterForm, 0, 10)], Differences(nearest));
    }

    [Theory]
    [InlineData("Wm Hathersedge", ".", "", DifferenceKind.Punctuation, 2)]
    [InlineData("Wm, Hathersedge", ".", ",", DifferenceKind.Punctuation, 2)]
    [InlineData("Wm.Hathersedge", " ", "", DifferenceKind.Spacing, 3)]
    [InlineData("Wm. Hather sedge", "", " ", DifferenceKind.Spacing, 10)]
    public void Stops_and_spaces_are_no_spelling(string read, string attested, string letter, DifferenceKind kind, int index)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal([(attested, letter, kind, 0, index)], Differences(nearest));
        Assert.Equal(0.25, nearest.Distance);
        Assert.Empty(nearest.SpellingDifferences);
    }

    [Theory]
    [InlineData("Wm. Hathersedge LONDON", 0, 14)]
    [InlineData("Improved by Wm. Hathersedge", 12, 26)]
    [InlineData("No. 1409 Wm. Hathersedge, Marlhaven", 9, 23)]
    [InlineData("(Wm. Hathersedge)", 1, 15)]
    public void Other_words_on_the_line_cost_nothing(string read, int first, int last)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal(0, nearest.Distance);
        Assert.Equal(new MatchedSpan(0, first, 0, last), nearest.Span);
    }

    [Fact]
    public void A_name_that_runs_into_the_town_is_still_found()
    {
        var nearest = Nearest(Fabricated.Reading("Wm. HathersedgeLONDON"));

        Assert.Equal(0, nearest.Distance);
        Assert.Equal(new MatchedSpan(0, 0, 0, 14), nearest.Span);
    }

    /// <summary>Two letters are no word that a reader ran together with the name: they are letters too many.</summary>
    [Theory]
    [InlineData("McTolliver")]
    [InlineData("TolliverCo")]
    public void Two_letters_that_run_into_a_name_are_no_other_word(string read)
    {
        var nearest = Nearest(Fabricated.Reading(read));

        Assert.Equal("Tolliver", nearest.Form.Form);
        Assert.Equal([DifferenceKind.Added, DifferenceKind.Added], nearest.SpellingDifferences.Select(difference => difference.Kind));
    }

    [Fact]
    public void A_name_over_four_lines_is_found_only_where_it_is_asked_for()
    {
        var (list, reading) = (Fabricated.List("Harwick & Penhale Junior"), Fabricated.Reading("Harwick", "&", "Penhale", "Junior"));

        Assert.Equal(0, new Comparer(list, new ComparerOptions { MaximumJoinedLines = 4 }).Compare(reading).Nearest[0].Distance);
        Assert.All(new Comparer(list).Compare(reading).Nearest, form => Assert.True(form.Distance > 1));
    }

    [Fact]
    public void A_letter_behind_a_name_is_not_another_word() => Assert.Equal([("", "s", DifferenceKind.Added, 0, 8)], Differences(Nearest(Fabricated.Reading("Tollivers"))));

    [Fact]
    public void A_name_may_run_over_two_lines()
    {
        var nearest = Nearest(Fabricated.Reading("No. 12", "Harwick &", "Penhble"));

        Assert.Equal("Harwick & Penhale", nearest.Form.Form);
        Assert.Equal(1, nearest.LineIndex);
        Assert.Equal(new MatchedSpan(1, 0, 2, 6), nearest.Span);
        Assert.Equal([("a", "b", DifferenceKind.Replaced, 2, 4)], Differences(nearest));
    }

    [Fact]
    public void A_name_may_run_over_three_lines()
    {
        var nearest = Nearest(Fabricated.Reading("Harwick", "&", "Penhale"));

        Assert.Equal(0, nearest.Distance);
        Assert.Equal(new MatchedSpan(0, 0, 2, 6), nearest.Span);
    }

    [Fact]
    public void The_form_that_explains_more_letters_comes_first()
    {
        Assert.Equal("Merrowby & Son", Nearest(Fabricated.Reading("Merrowby & Sons")).Form.Form);
        Assert.Equal("Merrowby", Nearest(Fabricated.Reading("Merrowby, Marlhaven")).Form.Form);
        Assert.Equal("Thos. Brackwell", Nearest(Fabricated.Reading("Thos. Barckwell", "14 Tolliver Street")).Form.Form);
    }

    [Fact]
    public void A_letter_as_likely_to_be_the_attested_one_costs_nothing_and_is_even()
    {
        var reading = Fabricated.Of(Fabricated.Line("Tollivor").With(6, 0.5, ("e", 0.5)));
        var nearest = Nearest(reading);

        Assert.Equal(0, nearest.Distance, 9);
        var difference = Assert.Single(nearest.Differences);
        Assert.Equal(("e", "o"), (difference.Attested, difference.Read));
        Assert.Equal(0.5, difference.Probability.Value, 9);
        Assert.Equal(0, difference.Log10Ratio, 9);
    }

    [Fact]
    public void A_letter_that_cannot_be_read_costs_half_and_is_even()
    {
        var nearest = Nearest(Fabricated.Of(Fabricated.Line("Tolliv?r").With(6, 0)));

        Assert.Equal(0.5, nearest.Distance, 9);
        Assert.Equal(("e", "?", 0.5), (nearest.Differences[0].Attested, nearest.Differences[0].Read, nearest.Differences[0].Probability.Value));
    }

    [Fact]
    public void The_listed_candidates_of_an_unreadable_letter_count()
    {
        var nearest = Nearest(Fabricated.Of(Fabricated.Line("Tolliv?r").With(6, 0.4, ("o", 0.4), ("c", 0.3), ("e", 0.004))));

        Assert.Equal(0.004 / 0.4, Math.Pow(10, nearest.Differences[0].Log10Ratio), 6);
        Assert.Equal("o", nearest.Differences[0].Rival);
    }

    /// <summary>By hand: beside sure letters a reader overlooks one in 200, so 0.005 against 0.995. Beside a letter whose doubt is 0.1, half of that doubt: 0.05 against 0.95; a doubt of 0.4 counts no more than 0.1 against 0.9.</summary>
    [Theory]
    [InlineData(Fabricated.Sure, 1.0 / 199)]
    [InlineData(0.9, 1.0 / 19)]
    [InlineData(0.6, 1.0 / 9)]
    public void A_letter_missing_beside_a_doubtful_one_may_have_been_overlooked(double neighbour, double ratio)
    {
        var nearest = Nearest(Fabricated.Of(Fabricated.Line("Pellowic").With(7, neighbour)));

        var difference = Assert.Single(nearest.Differences);
        Assert.Equal(("k", "", DifferenceKind.Missing), (difference.Attested, difference.Read, difference.Kind));
        Assert.Equal(Math.Log10(ratio), difference.Log10Ratio, 9);
        Assert.Equal(1 - ratio, nearest.Distance, 9);
    }

    [Fact]
    public void A_name_that_stands_twice_on_the_line_is_found_at_its_first_place() =>
        Assert.Equal(new MatchedSpan(0, 0, 0, 7), Nearest(Fabricated.Reading("Tolliver & Tolliver")).Span);

    [Fact]
    public void Two_letters_listed_in_the_place_of_one_speak_for_the_attested_two()
    {
        var nearest = Nearest(Fabricated.Of(Fabricated.Line("Toliver").With(2, 0.6, ("ll", 0.4))));

        var difference = Assert.Single(nearest.Differences);
        Assert.Equal(("l", "", DifferenceKind.Missing), (difference.Attested, difference.Read, difference.Kind));
        Assert.Equal(0.4 / 0.6, Math.Pow(10, difference.Log10Ratio), 6);
    }

    [Fact]
    public void Other_cases_of_a_letter_count_as_the_letter()
    {
        var nearest = Nearest(Fabricated.Of(Fabricated.Line("Tolliver").With(1, 0.55, ("O", 0.43), ("e", 0.01))));

        Assert.Equal(Math.Log10(0.98 / 0.01), nearest.Agreements[1].Log10Ratio, 6);
    }

    [Fact]
    public void Nothing_read_or_nothing_listed_is_nothing_near()
    {
        Assert.Empty(new Comparer(Fabricated.List(Houses)).Compare(Fabricated.Of()).Nearest);
        Assert.Empty(new Comparer(Fabricated.List(Houses)).Compare(Fabricated.Reading(string.Empty, " ")).Nearest);
        Assert.Empty(new Comparer(Fabricated.List()).Compare(Fabricated.Reading("Tolliver")).Nearest);
    }

    [Fact]
    public void The_reading_goes_through_untouched_whatever_the_list() =>
        Gen.Select(Gen.Int[0, Houses.Length - 1].Select(index => Houses[index]).Array[0, 5], Gen.String[Gen.Char["TolivrBacke &."], 0, 20].Array[0, 3]).Sample((forms, lines) =>
        {
            var reading = Fabricated.Reading(lines);
            var letters = lines.SelectMany(line => Fabricated.Clusters(line)).ToArray();
            var compared = new Comparer(Fabricated.List(forms)).Compare(reading);

            Assert.Same(reading, compared.Reading);
            Assert.Equal(letters, compared.Reading.Lines.SelectMany(line => line.Letters).Select(letter => letter.Character));
        });

    [Fact]
    public void A_list_of_reproductions_is_searched_like_any_other()
    {
        var list = Fabricated.List("Tolliver").Plus("TOLIVER", AttestationStatus.Reproduction);

        Assert.Equal(AttestationStatus.Reproduction, new Comparer(list).Compare(Fabricated.Reading("TOLIVER")).Nearest[0].Form.Status);
    }
}
