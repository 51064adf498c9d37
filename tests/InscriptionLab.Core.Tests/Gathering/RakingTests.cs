using System;
using System.Collections.Immutable;
using System.Linq;
using CsCheck;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Gathering;

public sealed class RakingTests
{
    private static readonly Gatherer Gatherer = new();

    [Fact]
    public void Each_lamp_errs_elsewhere_and_together_they_read_what_is_cut()
    {
        var joint = Together("Bardkwell", "Barckwcll", "Barckwell");

        Assert.Equal("Barckwell", joint.Text);
    }

    [Fact]
    public void A_misspelling_that_all_lamps_show_is_kept()
    {
        var joint = Together("Tloliver", "Tloliver", "TloliYer");

        Assert.Equal("Tloliver", joint.Text);
        Assert.All(joint.Letters.Take(6), letter => Assert.True(letter.Probability.Value >= ReadLines.Sure));
    }

    [Fact]
    public void Lamps_that_contradict_each_other_leave_both_letters_and_less_certainty()
    {
        var letter = Together("Harwick", "Harwack").Letters[4];

        Assert.InRange(letter.Probability.Value, 0.3, 0.7);
        Assert.Equal(["a", "i"], new[] { letter.Character }.Concat(letter.Alternatives.Take(1).Select(other => other.Character)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Lamps_that_agree_make_a_letter_surer_but_not_as_sure_as_independent_witnesses_would()
    {
        var letter = Together("A", "A").Letters[0];

        // Two independent witnesses of 0.9 whose doubt of 0.1 is spread over 50 letters: 0.81 against 50 times 0.002 squared.
        const double Independent = 0.81 / (0.81 + (50 * 0.002 * 0.002));
        Assert.InRange(letter.Probability.Value, 0.9, Independent - 0.005);
    }

    [Fact]
    public void The_end_of_a_line_that_one_lamp_lost_is_taken_from_another()
    {
        Assert.Equal("Monteverra", Together("onteverra", "Monteverr", "onteverra").Text);
    }

    [Fact]
    public void A_full_stop_that_one_lamp_lists_behind_its_letter_counts_for_the_full_stop()
    {
        var listing = ReadLines.At(0, 0, "Wm Harwick");
        var doubtful = listing.Letters[1] with { Probability = Probability.From(0.5), Alternatives = [new LetterCandidate("m.", Probability.From(0.49))] };
        listing = listing with { Letters = listing.Letters.SetItem(1, doubtful) };
        LineReading[] lines = [ReadLines.At(0, 0, "Wm. Harwick", 0.8), listing];

        Assert.Equal("Wm. Harwick", Assert.Single(Gatherer.Gather([.. lines.Select(line => new GatheredPhoto(null, ReadLines.Of(line)))], SetKind.Raking).Lines).Text);
    }

    [Fact]
    public void A_letter_that_one_lamp_sees_and_most_pass_over_is_left_out()
    {
        Assert.Equal("London", Together("London", "London", "Lonxdon").Text);
    }

    [Fact]
    public void Lines_keep_the_reader_s_order_whichever_photo_shows_them()
    {
        ImmutableArray<GatheredPhoto> photos =
        [
            new(null, ReadLines.Of(ReadLines.At(0, 100, "Second line"))),
            new(null, ReadLines.Of(ReadLines.At(0, 40, "First line"), ReadLines.At(0, 100, "Second line"), ReadLines.At(0, 160, "Third"))),
        ];

        Assert.Equal(["First line", "Second line", "Third"], Gatherer.Gather(photos, SetKind.Raking).Lines.Select(line => line.Text));
    }

    [Fact]
    public void A_line_read_quite_otherwise_at_the_same_place_says_nothing()
    {
        ImmutableArray<GatheredPhoto> photos =
        [
            new(null, ReadLines.Of(ReadLines.At(0, 40, "Marlhaven"))),
            new(null, ReadLines.Of(ReadLines.At(0, 42, "ARUNBN", 0.5))),
        ];

        Assert.Equal(["Marlhaven"], Gatherer.Gather(photos, SetKind.Raking).Lines.Select(line => line.Text));
    }

    [Fact]
    public void Photos_of_one_view_are_known_by_lines_that_stay_where_they_are()
    {
        GatheredPhoto Photo(double y, string text) => new(null, ReadLines.Of(ReadLines.At(0, y, text)));

        Assert.Equal(SetKind.Raking, Gatherer.KindOf([Photo(40, "Marlhaven"), Photo(43, "Marlhavcn")]));
        Assert.Null(Gatherer.KindOf([Photo(40, "Marlhaven"), Photo(40, "Port Tressick")]));
        Assert.Null(Gatherer.KindOf([Photo(40, "Marlhaven"), Photo(200, "Marlhaven")]));
        Assert.Null(Gatherer.KindOf([Photo(40, "Marlhaven")]));
    }

    [Fact]
    public void Whatever_is_read_probabilities_stay_probabilities_and_never_add_up_to_more_than_one()
    {
        var line = Gen.String[Gen.Char["abcdeI1 "], 1, 12].Select(Gen.Double[0.31, 1]);
        Gen.Select(line, line, line).Sample((one, two, three) =>
        {
            var joint = Gatherer.Gather([.. new[] { one, two, three }.Select(read => new GatheredPhoto(null, ReadLines.Of(ReadLines.At(0, 0, read.Item1, read.Item2))))], SetKind.Raking);
            foreach (var letter in joint.Lines.SelectMany(read => read.Letters))
            {
                Assert.InRange(letter.Probability.Value + letter.Alternatives.Where(_ => letter.Character != Letter.Unreadable).Sum(other => other.Probability.Value), 0, 1 + 1e-9);
            }
        });
    }

    private static LineReading Together(params string[] texts) =>
        Assert.Single(Gatherer.Gather([.. texts.Select(text => new GatheredPhoto(null, ReadLines.Of(ReadLines.At(0, 0, text))))], SetKind.Raking).Lines);
}
