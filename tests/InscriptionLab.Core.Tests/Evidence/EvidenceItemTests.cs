using System;
using System.Collections.Immutable;
using System.Linq;
using System.Text;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>Walks every kind of item that a report can have: each has its ratios, its reason, what it rests on, and what would change it.</summary>
public sealed class EvidenceItemTests
{
    private static readonly ReferenceForm Tolliver = new("Tolliver", "Tolliver", AttestationStatus.Attested)
    {
        Style = "roman",
        Layout = FormLayout.NameOverPlace,
        SignatureDirection = SignatureDirection.Around,
        SignaturePosition = "first draw",
        LetterHeight = Length.FromMillimetres(2.4),
        LetterSpacing = 0.5,
        Address = "14, Cawdry Lane, Marlhaven",
        From = 1788,
        To = 1815,
        Wording = "Day or Night",
    };

    private static readonly ReferenceList List = new("fabricated", string.Empty,
    [
        Tolliver,
        Tolliver with { Note = "another piece" },
        Tolliver with { Note = "a third piece" },
        new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { Address = "5, Gannet Stairs", From = 1850, To = 1870 },
        new ReferenceForm("Tollivar", "Tolliver", AttestationStatus.PeriodCopy) { From = 1800, To = 1820 },
        new ReferenceForm("TOLLIVER LONDON 1785", "Tolliver", AttestationStatus.Reproduction),
        new ReferenceForm("Corvestri", "Corvestri", AttestationStatus.Attested) { Address = "9, Marlgate", From = 1774, To = 1803 },
        new ReferenceForm("Oskelby", "Oskelby", AttestationStatus.Attested) { From = 1900, To = 1920 },
    ]);

    private static readonly ImmutableArray<EvidenceReport> Reports =
    [
        Report("signature_direction,around\nsignature_position,first draw\nletter_height_mm,2.4\nclear_mm,38\nobjective,achromatic\n", "roman", 10, "Tolliver", "14 Cawdry Lane", "Day or Night"),
        Report("signature_direction,toward-objective\nsignature_position,cap\nletter_height_mm,9\nclear_mm,380\nfinish,nickel\n", "sans", 30, "Tollivor MADE IN", "9 Marlgate"),
        Report(string.Empty, "script", 10, "Tollivar"),
        Report(string.Empty, "script", 10, "TOLLIVER LONDON 1785"),
        Report(string.Empty, "script", 10, "Tolliver", "Corvestri"),
        Report(string.Empty, "script", 10, "Tolliver", "Oskelby"),
        Report("finish,nickel\n", "roman", 10, List with { Forms = [Tolliver, .. List.Forms[4..], Tolliver with { Form = "Fennimarch", From = 1850, To = 1870, Address = "5, Gannet Stairs" }] }, "Tolliver", "5 Gannet Stairs", "MADE IN"),
    ];

    private static EvidenceReport Report(string record, string style, double step, params string[] lines) => Report(record, style, step, List, lines);

    private static EvidenceReport Report(string record, string style, double step, ReferenceList list, params string[] lines)
    {
        var reading = Fabricated.Of([.. lines.Select(line => Boxed(line, step))]) with { Style = [new StyleCandidate(style, Probability.One)] };
        var construction = new ConstructionReader(ConstructionTable.Default).Read("record.csv", Encoding.UTF8.GetBytes("feature,observation\n" + record));
        return new EvidenceWeigher(list).Weigh(reading, new Judge().Decide(new Comparer(list).Compare(reading)), Circumstances.None with { Construction = construction, HousesInOtherPhotos = ["Corvestri"] });
    }

    private static LineReading Boxed(string text, double step)
    {
        var line = Fabricated.Line(text);
        static Quad Box(double x) => new(new PixelPoint(x, 0), new PixelPoint(x + 8, 0), new PixelPoint(x + 8, 20), new PixelPoint(x, 20));
        return line with { Letters = [.. line.Letters.Select((letter, at) => letter with { InCrop = Box(at * step) })] };
    }

    [Fact]
    public void Every_row_of_the_weights_is_met_here()
    {
        var met = Reports.SelectMany(report => report.Items).Select(item => (item.Weight.Feature, item.Weight.Observation)).ToHashSet();
        var missing = EvidenceTables.Weights.Select(weight => (weight.Feature, weight.Observation)).Where(row => !met.Contains(row)).ToArray();

        Assert.True(missing.Length == 0, string.Join(", ", missing));
    }

    [Fact]
    public void Every_item_has_ratios_a_reason_a_source_and_what_would_change_it() => Assert.All(Reports.SelectMany(report => report.Items.Select(item => (report.Rows, Item: item))), pair =>
    {
        var (rows, item) = pair;
        Assert.Equal([(Proposition.House, Proposition.PeriodOther), (Proposition.House, Proposition.Modern), (Proposition.PeriodOther, Proposition.Modern)], item.Ratios.Select(ratio => (ratio.First, ratio.Second)));
        var options = new EvidenceOptions();
        var bound = Math.Min(item.Weight.Basis == "opinion" ? options.MaximumLog10OfOpinion : options.MaximumLog10OfFeature, Math.Log10(rows));
        Assert.All(item.Ratios, ratio => Assert.InRange(Math.Abs(ratio.Log10Ratio), 0, bound));
        Assert.True(item.Statement.Length > 20 && item.Statement.EndsWith('.') && char.IsUpper(item.Statement[0]), item.Statement);
        Assert.Contains(item.Weight.Basis, (string[])["choice", "count", "opinion"]);
        Assert.True(item.Weight.WouldChange.Length > 10, item.Weight.Feature);

        // A named source, or the plain word that there is none but common practice.
        string[] sources = ["common practice", "records", "notes", "Act", "rule", "the list itself"];
        Assert.True(sources.Any(source => item.Weight.Source.Contains(source, StringComparison.Ordinal)), $"{item.Weight.Feature} {item.Weight.Observation}: {item.Weight.Source}");
    });

    [Fact]
    public void Every_statement_of_years_has_a_source_and_a_coverage_below_certainty() => Assert.All(Reports.SelectMany(report => report.Dating.Statements), statement =>
    {
        Assert.True(statement.Source.Length > 5, statement.What);
        Assert.InRange(statement.Coverage, 0.5, 0.98);
    });

    [Fact]
    public void No_ratio_goes_beyond_the_number_of_rows() => Assert.All(Reports, report =>
        Assert.All(report.Ratios.Concat(report.Items.SelectMany(item => item.Ratios)), ratio => Assert.InRange(Math.Abs(ratio.Log10Ratio), 0, Math.Log10(report.Rows))));
}
