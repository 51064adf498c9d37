using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Evidence;

public sealed class EvidenceTests
{
    private static readonly ReferenceList List = new("fabricated", string.Empty,
    [
        new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { Style = "blackletter", Address = "14, Cawdry Lane, Marlhaven", From = 1788, To = 1815, Source = "Directory" },
        new ReferenceForm("TOLLIVER", "Tolliver", AttestationStatus.Attested) { Style = "roman", Address = "14, Cawdry Lane, Marlhaven", From = 1795, To = 1815 },
        new ReferenceForm("Tolliver & Son", "Tolliver", AttestationStatus.Attested) { Address = "30, Marlgate, Brackhaven", From = 1815, To = 1838 },
        new ReferenceForm("Tollivar", "Tolliver", AttestationStatus.PeriodCopy) { From = 1800, To = 1820 },
        new ReferenceForm("TOLLIVER LONDON 1785", "Tolliver", AttestationStatus.Reproduction),
        new ReferenceForm("Corvestri", "Corvestri", AttestationStatus.Attested) { Address = "14, Cawdry Lane, Marlhaven", From = 1774, To = 1803 },
    ]);

    private static EvidenceReport Report(params string[] lines) => Report(Fabricated.Reading(lines));

    private static EvidenceReport Report(Reading reading) => new EvidenceWeigher(List).Weigh(reading, new Judge().Decide(new Comparer(List).Compare(reading)));

    private static (string, string)[] Seen(EvidenceReport report) => [.. report.Items.Select(item => (item.Weight.Feature, item.Weight.Observation))];

    [Fact]
    public void Every_row_of_the_tables_names_its_source_and_basis()
    {
        Assert.All(EvidenceTables.Wordings, row => Assert.True(row.Source.Length > 10 && row.Basis is "law" or "museum" or "memory"));
        Assert.All(EvidenceTables.Weights, row => Assert.True(row.Source.Length > 10));
        Assert.All(EvidenceTables.Weights, row => Assert.All(Enum.GetValues<Proposition>(), proposition => Assert.InRange(row.Under(proposition), 0.001, 1)));
        Assert.All(EvidenceTables.Weights, row => Assert.True(row.WouldChange.Length > 10 && row.Basis is "choice" or "count" or "opinion"));
        Assert.Equal((9, 29), (EvidenceTables.Wordings.Length, EvidenceTables.Weights.Length));
        Assert.All(EvidenceTables.Styles, row => Assert.True(row.Source.Length > 10 && row.Coverage is > 0.5 and < 1));
    }

    [Fact]
    public void An_attested_spelling_is_dated_by_all_rows_of_the_spelling()
    {
        var report = Report("Tolliver");

        Assert.Equal(new DateInterval(1788, 1815), report.Dating.Combined);
        Assert.Equal([("spelling", "attested")], Seen(report));
        Assert.Equal(("Tolliver", 5), (report.House, report.Rows));
    }

    [Fact]
    public void An_address_narrows_the_years_of_the_house_at_it()
    {
        var report = Report("Tolliver & Son", "30 Marlgate");

        Assert.Equal(["the form 'Tolliver & Son'", "the address '30, Marlgate' of Tolliver"], report.Dating.Statements.Select(statement => statement.What));
        Assert.Equal(new DateInterval(1815, 1838), report.Dating.Combined);
        Assert.Contains(("address", "of-house"), Seen(report));
    }

    [Fact]
    public void Words_of_origin_do_not_fit_an_early_house()
    {
        var report = Report("Tolliver", "14 Cawdry Lane", "MADE IN ENGLAND");

        Assert.Null(report.Dating.Combined);
        Assert.True(report.Dating.IsApart);
        Assert.Contains(new DateInterval(1887, null), report.Dating.Statements.Select(statement => statement.Interval));
        Assert.Contains(("wording", "apart"), Seen(report));
        Assert.Contains(report.Sentences, sentence => sentence.StartsWith("These do not fit together", StringComparison.Ordinal));
    }

    [Fact]
    public void A_country_counts_only_alone_on_a_line_and_a_word_in_doubt_not_at_all()
    {
        Assert.Single(Report("Tolliver", "Rue du Compas, France").Dating.Statements);
        Assert.Equal(2, Report("Tolliver", "FRANCE").Dating.Statements.Length);
        Assert.Single(Report(Fabricated.Of(Fabricated.Line("Tolliver"), Fabricated.Line("FRANCE").With(2, 0.6, ("O", 0.4)))).Dating.Statements);
    }

    [Fact]
    public void A_misspelt_form_has_no_years_and_the_address_keeps_its_own()
    {
        var report = Report("Tollivor", "14 Cawdry Lane");

        Assert.Equal(["the address '14, Cawdry Lane' of Tolliver"], report.Dating.Statements.Select(statement => statement.What));
        Assert.Contains(("spelling", "other"), Seen(report));
    }

    [Fact]
    public void An_address_of_other_houses_is_said_to_be_theirs() =>
        Assert.Contains(Report("xyzzy", "14 Cawdry Lane").Dating.Statements, statement => statement.What == "the address '14, Cawdry Lane', which the list gives to Tolliver and Corvestri" && statement.Interval == new DateInterval(1774, 1815));

    [Fact]
    public void A_year_in_the_mark_is_evidence_and_a_number_of_the_piece_is_not()
    {
        Assert.Contains(("year", "cut"), Seen(Report("TOLLIVER LONDON 1785")));
        Assert.Contains(("spelling", "reproduction"), Seen(Report("TOLLIVER LONDON 1785")));
        Assert.DoesNotContain(("year", "cut"), Seen(Report("TOLLIVER", "No. 1785")));
    }

    [Fact]
    public void The_style_counts_where_it_is_known()
    {
        var reading = Fabricated.Reading("Tolliver");

        Assert.Contains(("style", "as-attested"), Seen(Report(reading with { Style = [new StyleCandidate("roman", Probability.From(0.9))] })));
        Assert.Contains(("style", "other"), Seen(Report(reading with { Style = [new StyleCandidate("sans", Probability.From(0.9))] })));
        Assert.DoesNotContain(("style", "other"), Seen(Report(reading with { Style = [new StyleCandidate("sans", Probability.From(0.7))] })));
    }

    /// <summary>
    /// Each of eight letters is 0.999 against 0.0005 (half of what is left over), so that the form is cut with 0.9960, the copy that differs in one letter
    /// with 0.0005 and something else with 0.0035. Three attested rows do not show another spelling to be rarer than 1/5, so that 0.17 goes from 0.9 to 0.03:
    /// (0.73 x 0.9960 + 0.02 x 0.0005 + 0.2 x 0.0035) over (0.3 x 0.9960 + 0.6 x 0.0005 + 0.4 x 0.0035) is 2.422 for the spelling, 0.7 over 0.4 for the style, 0.8 over 0.5
    /// for the address: 2.422 x 1.75 x 1.6 = 6.78, which five rows of the list cut to 5.
    /// </summary>
    [Fact]
    public void Ratios_multiply_and_are_cut_to_the_rows_of_the_house()
    {
        var spelling = Report("Tolliver").Ratios.Single(ratio => (ratio.First, ratio.Second) == (Proposition.House, Proposition.PeriodOther));
        var both = Report(Fabricated.Reading("Tolliver", "14 Cawdry Lane") with { Style = [new StyleCandidate("roman", Probability.One)] }).Ratios.Single(ratio => (ratio.First, ratio.Second) == (Proposition.House, Proposition.PeriodOther));

        var cut = Math.Pow(1 / (1 + (0.0005 / 0.999)), 8);
        var copy = cut * 0.0005 / 0.999;
        var rest = 1 - cut - copy;
        Assert.Equal(((0.73 * cut) + (0.02 * copy) + (0.2 * rest)) / ((0.3 * cut) + (0.6 * copy) + (0.4 * rest)), Math.Pow(10, spelling.Log10Ratio), 6);
        Assert.Equal(2.422, Math.Pow(10, spelling.Log10Ratio), 3);
        Assert.False(spelling.IsCapped);
        Assert.Equal((5, true), (Math.Round(Math.Pow(10, both.Log10Ratio), 9), both.IsCapped));
    }

    [Fact]
    public void Where_no_form_is_near_nothing_is_weighed()
    {
        Assert.Empty(Report("qzx vvkk").Ratios);
        Assert.Empty(Report(Fabricated.Of()).Sentences);
    }

    /// <summary>Attested with a half, not listed with a half: (0.365 + 0.1) over (0.15 + 0.2) is 1.33, hardly less for the doubt in the other letters and the listed copy, and the other two are nearer to 1 still.</summary>
    [Fact]
    public void A_letter_that_may_be_either_gives_ratios_near_one()
    {
        var report = Report(Fabricated.Of(Fabricated.Line("Tollivor").With(6, 0.5, ("e", 0.5))));

        Assert.Equal([("spelling", "open")], Seen(report));
        Assert.Equal(1.33, Math.Pow(10, report.Ratios[0].Log10Ratio), 2);
        Assert.All(report.Ratios, ratio => Assert.InRange(Math.Abs(ratio.Log10Ratio), 0, 0.2));
        Assert.Contains("leaves the spelling open", report.Items[0].Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_were_not_read_leave_the_spelling_unweighed() =>
        Assert.DoesNotContain(Report("Toliver &").Items, item => item.Weight.Feature == "spelling" && item.Weight.Observation == "attested");

    [Fact]
    public void Two_houses_on_one_piece_are_compared_each_and_the_pair_is_flagged()
    {
        var report = Report("Tolliver", "Corvestri");

        Assert.Contains(("names", "two-together"), Seen(report));
        Assert.Equal(("Corvestri", "Tolliver"), (report.House, report.Second!.Nearest.Form.Maker));
        Assert.Contains(report.Dating.Statements, statement => statement.Kind == DateKind.SecondName);
        Assert.DoesNotContain(Seen(Report("Tolliver", "Tolliver & Son")), seen => seen.Item1 == "names");
    }

    /// <summary>Each name is compared: the second one may be misspelt too, and then it dates nothing.</summary>
    [Fact]
    public void A_second_name_that_is_only_near_is_flagged_with_its_letter()
    {
        var report = Report("Tolliver", "Corvestry");

        Assert.Equal(("Tolliver", "Corvestri", false), (report.House, report.Second!.Nearest.Form.Maker, report.Second.IsSpeltAsListed));
        Assert.Contains(("names", "two-together"), Seen(report));
        Assert.Contains(report.Items, item => item.Statement.Contains("near to 'Corvestri' in the list ('y' for 'i', the picture 1998 times more probable with 'y')", StringComparison.Ordinal));
        Assert.DoesNotContain(report.Dating.Statements, statement => statement.Kind == DateKind.SecondName);
        Assert.Null(Report("Tolliver", "BRACKHAVEN").Second);
    }

    [Fact]
    public void Another_photo_with_another_house_is_flagged_and_weighs_nothing()
    {
        var reading = Fabricated.Reading("Tolliver");
        var finding = new Judge().Decide(new Comparer(List).Compare(reading));
        var alone = new EvidenceWeigher(List).Weigh(reading, finding);
        var beside = new EvidenceWeigher(List).Weigh(reading, finding, Circumstances.None with { HousesInOtherPhotos = ["Tolliver", "Corvestri"] });

        Assert.Contains(("photos", "two-houses"), Seen(beside));
        Assert.Equal(alone.Ratios, beside.Ratios);
    }

    /// <summary>0.1 over 0.3 is 1/3 against a modern piece's 1; a house and another of its time measure alike.</summary>
    [Theory]
    [InlineData("clear_mm,38\nouter_mm,44", "within", 1.0)]
    [InlineData("clear_mm,380", "outside", 1 / 3.0)]
    [InlineData("clear_mm,44\nouter_mm,38", "outside", 1 / 3.0)]
    [InlineData("clear_mm,38\nstop_mm,40", "outside", 1 / 3.0)]
    public void Measured_values_are_an_item(string values, string observation, double againstModern)
    {
        var record = new ConstructionReader(ConstructionTable.Default).Read("record.csv", System.Text.Encoding.UTF8.GetBytes($"feature,observation\n{values}\n"));
        var reading = Fabricated.Reading("Tolliver");
        var report = new EvidenceWeigher(List).Weigh(reading, new Judge().Decide(new Comparer(List).Compare(reading)), Circumstances.None with { Construction = record });

        var item = Assert.Single(report.Items, item => item.Weight.Feature == "measures");
        Assert.Equal(observation, item.Weight.Observation);
        Assert.Equal([1, againstModern, againstModern], item.Ratios.Select(ratio => Math.Round(Math.Pow(10, ratio.Log10Ratio), 9)).Select(ratio => Math.Abs(ratio - againstModern) < 1e-8 ? againstModern : ratio));
    }

    [Fact]
    public void Layout_and_direction_speak_little()
    {
        var list = List with { Forms = [.. List.Forms.Select(form => form with { Layout = FormLayout.OneLine, SignatureDirection = SignatureDirection.TowardEyepiece, SignaturePosition = "first draw" })] };
        var reading = Fabricated.Reading("Tolliver");
        var record = new ConstructionReader(ConstructionTable.Default).Read("record.csv", "feature,observation\nsignature_position,cap\nsignature_direction,toward-objective\n"u8);
        var report = new EvidenceWeigher(list).Weigh(reading, new Judge().Decide(new Comparer(list).Compare(reading)), Circumstances.None with { RunsAround = true, Construction = record });

        Assert.Equal([("layout", "as-attested"), ("direction", "other"), ("position", "other")], Seen(report)[1..]);
        Assert.All(report.Items.Skip(1), item => Assert.All(item.Ratios, ratio => Assert.InRange(Math.Abs(ratio.Log10Ratio), 0, 0.3)));
    }

    [Fact]
    public void A_probability_is_stated_only_for_odds_that_the_user_gave()
    {
        var reading = Fabricated.Reading("Tolliver");
        var finding = new Judge().Decide(new Comparer(List).Compare(reading));
        var without = new EvidenceWeigher(List).Weigh(reading, finding);
        var with = new EvidenceWeigher(List).Weigh(reading, finding, Circumstances.None with { Prior = PriorOdds.Parse("3/17") });

        Assert.Null(without.Posterior);
        Assert.Contains(without.Sentences, sentence => sentence.StartsWith("No probability is stated", StringComparison.Ordinal));

        // Odds of the house 3/17; each other 7/17. Against the period 2.422, against modern pieces 0.7278 over 0.3992 = 1.823: 1 / (1 + 7/3/2.422 + 7/3/1.823) = 0.308.
        Assert.Equal(0.308, with.Posterior!.House, 3);
        Assert.Equal(1, with.Posterior.House + with.Posterior.Period + with.Posterior.Modern, 12);
        Assert.Contains(with.Sentences, sentence => sentence.Contains("For the odds beforehand that you gave, 3/17: 31 % that the house named had it cut", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("3/17", 3.0 / 17, 7.0 / 17, 7.0 / 17)]
    [InlineData("3:10:4", 3.0 / 17, 10.0 / 17, 4.0 / 17)]
    [InlineData("0.5/1", 0.5, 0.25, 0.25)]
    public void A_prior_is_understood(string text, double house, double period, double modern)
    {
        var prior = PriorOdds.Parse(text)!;

        Assert.Equal(house, prior.House, 12);
        Assert.Equal(period, prior.Period, 12);
        Assert.Equal(modern, prior.Modern, 12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("17/3")]
    [InlineData("3/3")]
    [InlineData("0/17")]
    [InlineData("-3/17")]
    [InlineData("3:4")]
    [InlineData("NaN/3")]
    [InlineData("50 %")]
    public void Anything_else_is_no_prior(string text) => Assert.Null(PriorOdds.Parse(text));

    [Fact]
    public void Every_report_with_ratios_carries_its_caution_and_names_no_one() =>
        Assert.All([Report("Tolliver"), Report("Tollivor"), Report("Tollivar"), Report("TOLLIVER LONDON 1785")], report =>
        {
            var text = string.Join('\n', report.Sentences);
            Assert.Contains("The weights are choices, not counts", text, StringComparison.Ordinal);
            Assert.All(["fake", "forg", "fraud", "genuine", "authentic", "proof", "prove", "seller"], word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
        });

    [Fact]
    public void An_intersection_holds_exactly_the_years_of_both() =>
        Gen.Select(Gen.Int[1700, 1710], Gen.Int[0, 5], Gen.Int[1700, 1710], Gen.Int[0, 5], Gen.Int[1695, 1720]).Sample((a, b, c, d, year) =>
        {
            static bool Holds(DateInterval? interval, int year) => interval is { } years && (years.From ?? year) <= year && year <= (years.To ?? year);
            var (first, second) = (new DateInterval(a, a + b), new DateInterval(c, c + d));

            Assert.Equal(Holds(first, year) && Holds(second, year), Holds(first.Intersect(second), year));
            Assert.True(!(Holds(first, year) || Holds(second, year)) || Holds(first.Hull(second), year));
        });
}
