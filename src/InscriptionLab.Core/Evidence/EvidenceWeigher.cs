using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>
/// Weighs spelling, style, a year in the mark and the fit of the years under three propositions: the house, another of its time, a modern
/// decorative piece. The features are taken as independent; each ratio is capped, and all together by the number of rows for the house.
/// </summary>
public sealed class EvidenceWeigher
{
    private const string Caution =
        "The weights are choices, not counts; features are taken as independent; a ratio is not the probability of a proposition, which needs the odds beforehand, and those are yours.";

    private readonly ReferenceList _references;
    private readonly EvidenceOptions _options;
    private readonly Dater _dater;

    /// <summary>Makes a weigher for a list.</summary>
    /// <param name="references">The list.</param>
    /// <param name="options">Bounds; null for the defaults.</param>
    public EvidenceWeigher(ReferenceList references, EvidenceOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(references);
        _references = references;
        _options = options ?? new EvidenceOptions();
        _dater = new Dater(references, _options);
    }

    /// <summary>Weighs a reading and its finding.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="finding">The finding on it against the same list.</param>
    public EvidenceReport Weigh(Reading reading, Finding finding)
    {
        var dating = _dater.Date(reading, finding);
        var house = finding.Leading?.Form.Maker;
        var rows = _references.Forms.Count(form => form.Maker == house);
        ImmutableArray<EvidenceItem> items = house is null ? [] : [.. Spelling(finding), .. Style(reading, finding), .. Year(reading), .. Dates(dating)];
        ImmutableArray<PairRatio> ratios = items.IsEmpty ? [] : [.. Pairs().Select(pair => Ratio(pair.First, pair.Second, items, rows))];
        return new EvidenceReport(house, rows, items, ratios, dating, [.. Sentences(house, rows, items, ratios), .. dating.Sentences]);
    }

    private static IEnumerable<EvidenceItem> Spelling(Finding finding)
    {
        var leading = finding.Leading!;
        var observation = (finding.Outcome, leading.Form.Status, leading.SpellingDifferences.IsEmpty) switch
        {
            (FindingOutcome.Agrees, _, _) => "attested",
            (FindingOutcome.Differs, AttestationStatus.PeriodCopy, true) => "period-copy",
            (FindingOutcome.Differs, AttestationStatus.Reproduction, true) => "reproduction",
            (FindingOutcome.Differs, _, _) => "other",
            _ => null,
        };
        return observation switch
        {
            null => [],
            "other" => [Item("spelling", observation, $"The spelling is not that of '{leading.Form.Form}' or of any other row.")],
            _ => [Item("spelling", observation, $"The spelling is that of '{leading.Form.Form}', listed as {observation}.")],
        };
    }

    private IEnumerable<EvidenceItem> Style(Reading reading, Finding finding)
    {
        if (finding.Leading?.Form.Maker is not { } house || reading.Style is not [var style, ..] || style.Probability.Value < _options.KnownStyle)
        {
            return [];
        }

        string[] attested = [.. _references.Forms.Where(form => form.Maker == house && form.Status == AttestationStatus.Attested).Select(form => form.Style).OfType<string>().Distinct()];
        return attested.Length == 0
            ? []
            : [Item("style", attested.Contains(style.Style) ? "as-attested" : "other", $"The lettering is {style.Style}; the list has {string.Join(" and ", attested)} for the house.")];
    }

    private IEnumerable<EvidenceItem> Year(Reading reading) => new WordsRead(reading, _options.ReadableLetter).Years(_options.FirstYear, _options.LastYear)
        .Take(1)
        .Select(year => Item("year", "cut", string.Create(CultureInfo.InvariantCulture, $"A number that looks like a year, {year}, is part of the mark.")));

    private static IEnumerable<EvidenceItem> Dates(Dating dating) => dating.Statements.Length < 2
        ? []
        : [Item("dates", dating.IsApart ? "apart" : "together", dating.IsApart ? "The years of form, address and words do not fit together." : $"The years of form, address and words fit together: {dating.Combined}.")];

    private static EvidenceItem Item(string feature, string observation, string statement) =>
        new(statement, EvidenceTables.Weights.Single(weight => weight.Feature == feature && weight.Observation == observation));

    private static IEnumerable<(Proposition First, Proposition Second)> Pairs() =>
        [(Proposition.House, Proposition.PeriodOther), (Proposition.House, Proposition.Modern), (Proposition.PeriodOther, Proposition.Modern)];

    private PairRatio Ratio(Proposition first, Proposition second, ImmutableArray<EvidenceItem> items, int rows)
    {
        var sum = items.Sum(item => EvidenceMath.Capped(Math.Log10(item.Weight.Under(first) / item.Weight.Under(second)), _options.MaximumLog10OfFeature));
        var capped = EvidenceMath.Capped(sum, Math.Min(_options.MaximumLog10, Math.Log10(Math.Max(1, rows))));
        return new PairRatio(first, second, capped, !capped.Equals(sum));
    }

    private static IEnumerable<string> Sentences(string? house, int rows, ImmutableArray<EvidenceItem> items, ImmutableArray<PairRatio> ratios)
    {
        if (items.IsEmpty)
        {
            yield break;
        }

        foreach (var item in items)
        {
            yield return item.Statement;
        }

        foreach (var ratio in ratios)
        {
            var (better, worse) = ratio.Log10Ratio >= 0 ? (ratio.First, ratio.Second) : (ratio.Second, ratio.First);
            var times = Math.Pow(10, Math.Abs(ratio.Log10Ratio));
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"What was seen is {times:0.0} times more probable if {Words(better)} than if {Words(worse)} ({VerbalScale.For(ratio.Log10Ratio)}{(ratio.IsCapped ? $"; not more is claimed from {rows} rows of the list for {house}" : string.Empty)}).");
        }

        yield return Caution;
    }

    private static string Words(Proposition proposition) => proposition switch
    {
        Proposition.House => "the house named had it cut",
        Proposition.PeriodOther => "another had it cut in the house's time",
        _ => "it was cut for a modern decorative piece",
    };
}
