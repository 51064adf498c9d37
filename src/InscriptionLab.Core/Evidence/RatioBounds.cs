using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Findings;

namespace InscriptionLab.Evidence;

/// <summary>Makes ratios that go no further than what they rest on: each no further than its kind allows, and none beyond the number of rows that the list has for the house.</summary>
/// <param name="options">Bounds.</param>
/// <param name="rows">Rows for the house.</param>
internal sealed class RatioBounds(EvidenceOptions options, int rows)
{
    private readonly double _rows = Math.Log10(Math.Max(1, rows));

    /// <summary>Gets the pairs of propositions, in the order in which ratios are given.</summary>
    internal static ImmutableArray<(Proposition First, Proposition Second)> Pairs { get; } =
        [(Proposition.House, Proposition.PeriodOther), (Proposition.House, Proposition.Modern), (Proposition.PeriodOther, Proposition.Modern)];

    /// <summary>Gives the ratios of one observation, pair by pair.</summary>
    internal ImmutableArray<PairRatio> Of(FeatureWeight weight) => [.. Pairs.Select(pair => new PairRatio(pair.First, pair.Second, Bounded(weight, pair), !Bounded(weight, pair).Equals(Log10(weight, pair))))];

    /// <summary>Gives the ratios of observations together, pair by pair; a pair counts as capped where the number of rows or the bound of all together held it back, in the sum or in one observation.</summary>
    internal ImmutableArray<PairRatio> Together(ImmutableArray<FeatureWeight> weights) => [.. Pairs.Select(pair =>
    {
        var bounded = EvidenceMath.Capped(weights.Sum(weight => Bounded(weight, pair)), Math.Min(options.MaximumLog10, _rows));
        return new PairRatio(pair.First, pair.Second, bounded, !bounded.Equals(weights.Sum(weight => OfItsKind(weight, pair))));
    })];

    private double Bounded(FeatureWeight weight, (Proposition First, Proposition Second) pair) => EvidenceMath.Capped(OfItsKind(weight, pair), _rows);

    private double OfItsKind(FeatureWeight weight, (Proposition First, Proposition Second) pair) =>
        EvidenceMath.Capped(Log10(weight, pair), weight.Basis == "opinion" ? options.MaximumLog10OfOpinion : options.MaximumLog10OfFeature);

    private static double Log10(FeatureWeight weight, (Proposition First, Proposition Second) pair) => Math.Log10(weight.Under(pair.First) / weight.Under(pair.Second));
}
