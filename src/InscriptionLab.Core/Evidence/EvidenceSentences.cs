using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Findings;

namespace InscriptionLab.Evidence;

/// <summary>Sentences of the weighing: neutral, each checkable in the tables.</summary>
public static class EvidenceSentences
{
    /// <summary>What the ratios are not; said wherever they are shown.</summary>
    public const string Caution =
        "The weights are choices, not counts; features are taken as independent; a ratio is not the probability of a proposition, which needs the odds beforehand, and those are yours.";

    /// <summary>Said where no odds beforehand were given; how to give them depends on where they are asked for.</summary>
    public const string NoOdds = "No probability is stated, since no odds beforehand were given";

    /// <summary>Gives a ratio in words.</summary>
    /// <param name="ratio">The ratio.</param>
    public static string Of(PairRatio ratio)
    {
        System.ArgumentNullException.ThrowIfNull(ratio);
        var (better, worse) = ratio.Log10Ratio >= 0 ? (ratio.First, ratio.Second) : (ratio.Second, ratio.First);
        var times = System.Math.Pow(10, System.Math.Abs(ratio.Log10Ratio));
        return string.Create(CultureInfo.InvariantCulture, $"{times:0.0} times more probable if {Words(better)} than if {Words(worse)} ({VerbalScale.For(ratio.Log10Ratio)})");
    }

    /// <summary>Gives the probabilities for odds that the user gave.</summary>
    /// <param name="prior">The odds as the user wrote them.</param>
    /// <param name="posterior">The probabilities.</param>
    public static string Of(string prior, Posterior posterior)
    {
        System.ArgumentNullException.ThrowIfNull(posterior);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"For the odds beforehand that you gave, {prior}: {posterior.House:0 %} that {Words(Proposition.House)}, {posterior.Period:0 %} that {Words(Proposition.PeriodOther)}, {posterior.Modern:0 %} that {Words(Proposition.Modern)}. Other odds give other figures.");
    }

    /// <summary>Gives a proposition in words.</summary>
    public static string Words(Proposition proposition) => proposition switch
    {
        Proposition.House => "the house named had it cut",
        Proposition.PeriodOther => "another had it cut in the house's time",
        _ => "it was cut for a modern decorative piece",
    };

    internal static ImmutableArray<string> Of(EvidenceReport report) => [.. Weighed(report), .. report.Dating.Sentences, .. report.Remarks];

    private static IEnumerable<string> Weighed(EvidenceReport report)
    {
        if (report.Items.IsEmpty)
        {
            yield break;
        }

        foreach (var item in report.Items)
        {
            yield return item.Statement;
        }

        foreach (var ratio in report.Ratios)
        {
            var capped = ratio.IsCapped ? string.Create(CultureInfo.InvariantCulture, $"; not more is claimed from {report.Rows} rows of the list for {report.House}") : string.Empty;
            yield return $"All together is {Of(ratio)}{capped}.";
        }

        yield return (report.Prior, report.Posterior) switch
        {
            ({ } prior, { } posterior) => Of(prior.AsGiven, posterior),
            _ => $"{NoOdds} (--prior; 3/17, three of seventeen, is common practice for much-copied names and rests on no count).",
        };
        if (report.Deciding is { } deciding)
        {
            yield return deciding.Sentence;
        }

        yield return Caution;
    }

    /// <summary>Gets the bands of the verbal scale, a sentence each, for printing with every report.</summary>
    public static ImmutableArray<string> Scale { get; } =
    [
        .. VerbalScale.Bands.Select((band, index) => index + 1 < VerbalScale.Bands.Length
            ? string.Create(CultureInfo.InvariantCulture, $"{band.From:#,0} to {VerbalScale.Bands[index + 1].From:#,0}: {band.Words}")
            : string.Create(CultureInfo.InvariantCulture, $"{band.From:#,0} and more: {band.Words}")),
    ];
}
