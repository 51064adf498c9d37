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
        Assert.All(EvidenceTables.Weights, row => Assert.True(row.Source.Length > 10 && row.Basis is "choice" or "count"));
        Assert.All(EvidenceTables.Weights, row => Assert.All(Enum.GetValues<Proposition>(), proposition => Assert.InRange(row.Under(proposition), 0.001, 1)));
        Assert.Equal((9, 9), (EvidenceTables.Wordings.Length, EvidenceTables.Weights.Length));
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
        Assert.Contains(("dates", "together"), Seen(report));
    }

    [Fact]
    public void Words_of_origin_do_not_fit_an_early_house()
    {
        var report = Report("Tolliver", "14 Cawdry Lane", "MADE IN ENGLAND");

        Assert.Null(report.Dating.Combined);
        Assert.True(report.Dating.IsApart);
        Assert.Contains(new DateInterval(1887, null), report.Dating.Statements.Select(statement => statement.Interval));
        Assert.Contains(("dates", "apart"), Seen(report));
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

    /// <summary>0.9 over 0.3 for the spelling, 0.7 over 0.4 for the style: 3 x 1.75 = 5.25, which five rows of the list cut to 5.</summary>
    [Fact]
    public void Ratios_multiply_and_are_cut_to_the_rows_of_the_house()
    {
        var spelling = Report("Tolliver").Ratios.Single(ratio => (ratio.First, ratio.Second) == (Proposition.House, Proposition.PeriodOther));
        var both = Report(Fabricated.Reading("Tolliver") with { Style = [new StyleCandidate("roman", Probability.One)] }).Ratios.Single(ratio => (ratio.First, ratio.Second) == (Proposition.House, Proposition.PeriodOther));

        Assert.Equal((3, false), (Math.Round(Math.Pow(10, spelling.Log10Ratio), 9), spelling.IsCapped));
        Assert.Equal((5, true), (Math.Round(Math.Pow(10, both.Log10Ratio), 9), both.IsCapped));
    }

    [Fact]
    public void Where_no_form_is_near_or_the_photo_cannot_decide_nothing_is_weighed()
    {
        Assert.Empty(Report("qzx vvkk").Ratios);
        Assert.Empty(Report(Fabricated.Of(Fabricated.Line("Tollivor").With(6, 0.5, ("e", 0.5)))).Ratios);
        Assert.Empty(Report(Fabricated.Of()).Sentences);
    }

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
