using System;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>What to look at next, each number worked by hand.</summary>
public sealed class NextObservationTests
{
    private static readonly ConstructionTable NoQuestions = new("none", []);

    private static ReferenceForm Row(string form, int? from, int? to, string? address = null) =>
        new(form, "Tolliver", AttestationStatus.Attested) { From = from, To = to, Address = address, Certainty = FormCertainty.Certain };

    private static ReferenceList List(params ReferenceForm[] rows) => new("fabricated", string.Empty, [.. rows]);

    private static Reading Roman(params LineReading[] lines) => Fabricated.Of(lines) with { Style = [new StyleCandidate("roman", Probability.One)] };

    private static EvidenceReport Report(ReferenceList list, Reading reading, Circumstances? known = null, ConstructionTable? table = null) =>
        new EvidenceWeigher(list, null, null, table ?? NoQuestions).Weigh(reading, new Judge().Decide(new Comparer(list).Compare(reading)), known);

    /// <summary>
    /// The form's 20 years, 1801 to 1820, hold 0.95, each of the other 311 a leak of (0.05 / 0.95) x 20 / 311 = 0.00338 of one. Two addresses have ten of the years each and a leak of
    /// (0.05 / 0.95) x 10 / 321 = 0.00164. Half of the pieces have an address. In the ten years of the first it is found with 0.5 x 1 / 1.00164 = 0.4992, in those of the second with
    /// 0.5 x 0.00164 / 1.00164 = 0.0008, outside with 0.5 x 0.00164: 0.475 x 0.4992 + 0.475 x 0.0008 + 0.05 x 0.0008 = 0.2375, and the second alike. Found, it leaves ten years
    /// (they hold 10 of 10.018); not found, 20 stay: 0.475 x 10 + 0.525 x 20 = 15.25.
    /// </summary>
    [Fact]
    public void An_address_that_may_be_found_is_weighed_by_how_often_it_is()
    {
        var list = List(Row("Tolliver", 1801, 1810, "14, Cawdry Lane, Marlhaven"), Row("Tolliver", 1811, 1820, "30, Marlgate, Brackhaven"));
        var next = Report(list, Roman(Fabricated.Line("Tolliver"))).Dating.Next!;

        Assert.Equal("whether an address is cut anywhere on the piece ('14, Cawdry Lane', '30, Marlgate' in the list)", next.Question);
        Assert.Equal(20, next.YearsNow);
        Assert.Equal(15.25, next.YearsExpected, 2);
        Assert.Equal("What would narrow the years most: whether an address is cut anywhere on the piece ('14, Cawdry Lane', '30, Marlgate' in the list) (from 20 years to 15 on average).", next.Sentence);
    }

    /// <summary>Once the address is read it is asked for no more; the years are its own.</summary>
    [Fact]
    public void What_was_seen_is_asked_for_no_more()
    {
        var list = List(Row("Tolliver", 1801, 1810, "14, Cawdry Lane, Marlhaven"), Row("Tolliver", 1811, 1820, "30, Marlgate, Brackhaven"));

        Assert.Null(Report(list, Roman(Fabricated.Line("Tolliver"), Fabricated.Line("14 Cawdry Lane"))).Dating.Next);
    }

    /// <summary>
    /// Seven letters at 0.999 against 0.0005 and one that is 'e' or 'o' alike: each of two forms is cut with (1 / 1.0005)^7 x 0.5 = 0.4983. Whichever it is, its 20 years
    /// are left; with 0.0035 it is neither and all 331 years stay: 0.9965 x 20 + 0.0035 x 331 = 21.09.
    /// </summary>
    [Fact]
    public void Another_photo_of_letters_left_open_is_weighed_by_what_this_one_shows()
    {
        var list = List(Row("Tolliver", 1801, 1820), Row("Tollivor", 1851, 1870));
        var next = Report(list, Roman(Fabricated.Line("Tolliver").With(6, 0.5, ("o", 0.5)))).Dating.Next!;

        Assert.StartsWith("a nearer or better lit photo of the letters that this one leaves open", next.Question, StringComparison.Ordinal);
        Assert.Equal(331, next.YearsNow);
        Assert.Equal(21.09, next.YearsExpected, 2);
    }

    /// <summary>Words that tell of a first year: the piece's years must go on past it. That the style is not known changes nothing, since no style holds nine in ten.</summary>
    [Fact]
    public void Words_are_asked_for_where_they_would_narrow()
    {
        var open = List(Row("Tolliver", 1801, null));

        Assert.All([Report(open, Roman(Fabricated.Line("Tolliver"))).Dating.Next!, Report(open, Fabricated.Reading("Tolliver")).Dating.Next!], next =>
        {
            Assert.Contains("words that tell of a first year ('MADE IN', 'ENGLAND', 'FRANCE' and others)", next.Question, StringComparison.Ordinal);
            Assert.True(next.YearsExpected <= next.YearsNow - 1);
        });
        Assert.Null(Report(List(Row("Tolliver", 1801, 1830)), Fabricated.Reading("Tolliver")).Dating.Next);
    }

    /// <summary>One piece in five of the later 25 of 50 years has the words: found with 0.2 x 0.5 = 0.1, less what lies outside, they leave 25 years: 0.095 x 25 + 0.905 x 50 = 47.6.</summary>
    [Fact]
    public void The_house_s_own_words_are_asked_for()
    {
        var list = List(Row("Tolliver", 1801, 1850), Row("Tolliver & Son", 1826, 1850) with { Wording = "Day or Night" });
        var next = Report(list, Roman(Fabricated.Line("Tolliver"))).Dating.Next!;

        Assert.Equal("whether the house's words are cut anywhere on the piece ('Day or Night')", next.Question);
        Assert.Equal(50, next.YearsNow);
        Assert.Equal(47.6, next.YearsExpected, 1);
    }

    /// <summary>
    /// Nothing speaks yet: 1.585 bits. A style as attested is 0.7, 0.4 and 0.3, another 0.3, 0.6 and 0.7. The first, seen with 1.4 / 3, leaves 0.5, 0.286 and 0.214, which are 1.493 bits; the
    /// second, with 1.6 / 3, leaves 0.1875, 0.375 and 0.4375, which are 1.505: 1.499 on average. Diameters would leave 1.534: within the range 0.833, 0.833 and 0.625, which changes nothing, outside a third for the first two.
    /// </summary>
    [Fact]
    public void What_decides_most_between_the_propositions_is_found_by_expected_doubt()
    {
        var list = List([.. Enumerable.Range(0, 10).Select(_ => Row("Tolliver & Co", null, null) with { Style = "roman" })]);
        var deciding = Report(list, Fabricated.Reading("Tolliver &"), Circumstances.None with { HousesInOtherPhotos = ["Corvestri"] }).Deciding!;

        Assert.StartsWith("the style of the lettering", deciding.What, StringComparison.Ordinal);
        Assert.Equal(1.585, deciding.BitsNow, 3);
        Assert.Equal(1.499, deciding.BitsExpected, 3);
        Assert.Contains("as attested: the house 1.8 to 1 against another of its time, 2.3 to 1 against a modern piece; other: the house 1 to 2.0 against another of its time, 1 to 2.3 against a modern piece)", deciding.Sentence, StringComparison.Ordinal);
        Assert.EndsWith("for this comparison alone the three are taken as equally likely beforehand.", deciding.Sentence, StringComparison.Ordinal);
        Assert.False(deciding.IsForOwnPrior);

        var bare = List([.. Enumerable.Range(0, 10).Select(_ => Row("Tolliver & Co", null, null))]);
        var measures = Report(bare, Fabricated.Reading("Tolliver &"), Circumstances.None with { HousesInOtherPhotos = ["Corvestri"] }).Deciding!;
        Assert.StartsWith("the diameters of the piece", measures.What, StringComparison.Ordinal);
        Assert.Equal(1.534, measures.BitsExpected, 3);
    }

    /// <summary>
    /// An address is on every other piece. Of the house, with 0.5 x (0.8421 + 0.4167 + 0.3) / 3 = 0.2598, it leaves 0.5, 0.3125 and 0.1875, which are 1.4772 bits; apart, with 0.1171, 0.0667, 0.4 and
    /// 0.5333, which are 1.2729; of others, with 0.1231, 0.125, 0.5 and 0.375, which are 1.4056; none, with 0.5, the 1.5850 there are: 1.498 on average.
    /// </summary>
    [Fact]
    public void What_may_not_be_found_leaves_the_doubt_as_it_is()
    {
        var list = List([.. Enumerable.Range(0, 10).Select(_ => Row("Tolliver & Co", null, null, "14, Cawdry Lane, Marlhaven"))]);
        var deciding = Report(list, Fabricated.Reading("Tolliver &"), Circumstances.None with { HousesInOtherPhotos = ["Corvestri"] }).Deciding!;

        Assert.StartsWith("whether an address is cut anywhere", deciding.What, StringComparison.Ordinal);
        Assert.Equal(1.498, deciding.BitsExpected, 3);
    }

    /// <summary>Odds of 998 to 1 and 1 leave 0.023 bits, of which no diameter takes a hundredth.</summary>
    [Fact]
    public void Where_next_to_nothing_is_in_doubt_nothing_is_asked_for()
    {
        var list = List([.. Enumerable.Range(0, 10).Select(_ => Row("Tolliver & Co", null, null))]);
        DecidingObservation? For(string odds) => Report(list, Fabricated.Reading("Tolliver &"), Circumstances.None with { HousesInOtherPhotos = ["Corvestri"], Prior = PriorOdds.Parse(odds) }).Deciding;

        Assert.NotNull(For("1:1:1"));
        Assert.Null(For("998:1:1"));
    }

    /// <summary>What the user thinks beforehand counts where it was given.</summary>
    [Fact]
    public void The_user_s_own_odds_count()
    {
        var list = List([.. Enumerable.Range(0, 10).Select(_ => Row("Tolliver & Co", null, null) with { Style = "roman" })]);
        var deciding = Report(list, Fabricated.Reading("Tolliver &"), Circumstances.None with { HousesInOtherPhotos = ["Corvestri"], Prior = PriorOdds.Parse("8:1:1") }).Deciding!;

        Assert.True(deciding.IsForOwnPrior);
        Assert.Equal(-((0.8 * Math.Log2(0.8)) + (0.2 * Math.Log2(0.1))), deciding.BitsNow, 9);
        Assert.EndsWith("1 to 2.3 against a modern piece).", deciding.Sentence, StringComparison.Ordinal);
    }

    /// <summary>With one row no ratio goes beyond 1, whatever is seen: only another row would let more be said.</summary>
    [Fact]
    public void Where_rows_hold_the_ratios_back_another_row_decides_most()
    {
        var report = Report(List(Row("Tolliver", 1801, 1820) with { Style = "roman" }), Roman(Fabricated.Line("Tolliver")));

        Assert.All(report.Items.SelectMany(item => item.Ratios).Concat(report.Ratios), ratio => Assert.Equal(0, ratio.Log10Ratio));
        Assert.All(report.Ratios, ratio => Assert.True(ratio.IsCapped));
        Assert.StartsWith("no more of this piece, but one more documented piece of the house in the list", report.Deciding!.What, StringComparison.Ordinal);
        Assert.Contains("the house 2.0 to 1 against another of its time", report.Deciding.Sentence, StringComparison.Ordinal);
    }
}
