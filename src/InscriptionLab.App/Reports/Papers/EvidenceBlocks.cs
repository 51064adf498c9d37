using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>The weighing under three propositions and the years, as parts of a paper. It is written from the record, so that a kept record gives the same words as a fresh examination.</summary>
internal static class EvidenceBlocks
{
    /// <summary>Gives the parts; none where nothing was weighed.</summary>
    internal static IEnumerable<Block> Of(EvidenceRecord? evidence) => evidence is null ? [] : Weighing(evidence).Concat(Years(evidence));

    /// <summary>Gives the years that hold the coverage in words, such as "1790 to 1820"; null where nothing tells of years.</summary>
    internal static string? IntervalOf(EvidenceRecord? evidence) =>
        evidence is { Years: { Statements.IsEmpty: false, Coverage: > 0 } years } ? new DateInterval(years.From, years.To).ToString() : null;

    private static IEnumerable<Block> Weighing(EvidenceRecord evidence)
    {
        if (evidence.Items.IsEmpty)
        {
            yield break;
        }

        yield return new Block.Heading("How strongly the evidence speaks", 3);
        yield return new Block.Sentences(EvidenceWords.Propositions);
        ImmutableArray<PairRatio> together = evidence.Together is { } all ? Pairs(all) : [];
        var head = Pairs(evidence.Items[0].Ratios).Select(EvidenceWords.NameOf);
        yield return new Block.Grid(
            ["what was seen", .. head, "rests on", "would change with"],
            [
                .. evidence.Items.Select(item => Row(item.Statement, Pairs(item.Ratios), $"{item.Basis}: {item.Source}", item.WouldChange)),
                .. together.IsEmpty ? ImmutableArray<ImmutableArray<string>>.Empty : [Row("all together", together, evidence.Together!.Capped ? "capped by the number of rows for the house" : "the product", "any of the above")],
            ]);
        yield return new Block.Sentences([.. together.Select(ratio => $"All together is {EvidenceSentences.Of(ratio)}."), .. Odds(evidence), .. evidence.Decides is { } decides ? ImmutableArray.Create(decides) : [], EvidenceSentences.Caution]);
    }

    private static IEnumerable<string> Odds(EvidenceRecord evidence)
    {
        if (evidence is { Prior: { } prior, Posterior: { } posterior })
        {
            yield return EvidenceSentences.Of(prior, new Posterior(posterior.House, posterior.Period, posterior.Modern));
        }

        if (evidence.Second is { } second)
        {
            yield return $"A second house is named: {second.Maker}, as '{second.Form}'.";
        }
    }

    private static IEnumerable<Block> Years(EvidenceRecord evidence)
    {
        var years = evidence.Years;
        if (years.Statements.IsEmpty && evidence.Remarks.IsEmpty)
        {
            yield break;
        }

        yield return new Block.Heading("Years that words and parts tell of", 3);
        if (IntervalOf(evidence) is { } interval)
        {
            yield return new Block.Facts([("years", string.Create(CultureInfo.InvariantCulture, $"{interval} ({years.Coverage:0 %} of the weight, each statement doubted as said)"))]);
            yield return new Block.Grid(
                ["what tells of years", "years", "holds for", "rests on"],
                [.. years.Statements.Select(statement => ImmutableArray.Create(statement.What, new DateInterval(statement.From, statement.To).ToString(), statement.Coverage.ToString("0 %", CultureInfo.InvariantCulture), statement.Source))]);
        }

        ImmutableArray<string> said =
        [
            .. years.Statements.IsEmpty ? ImmutableArray<string>.Empty : [years.Fits ? Dating.Reach : Dating.Apart],
            .. years.Conflicts,
            .. evidence.Remarks,
            .. years.Next is { } next ? ImmutableArray.Create(next) : [],
        ];
        yield return new Block.Sentences(said);
    }

    private static ImmutableArray<string> Row(string seen, ImmutableArray<PairRatio> ratios, string basis, string change) => [seen, .. ratios.Select(EvidenceWords.ValueOf), basis, change];

    private static ImmutableArray<PairRatio> Pairs(RatiosRecord ratios) =>
    [
        new(Proposition.House, Proposition.PeriodOther, ratios.HouseAgainstPeriod, ratios.Capped),
        new(Proposition.House, Proposition.Modern, ratios.HouseAgainstModern, ratios.Capped),
        new(Proposition.PeriodOther, Proposition.Modern, ratios.PeriodAgainstModern, ratios.Capped),
    ];
}
