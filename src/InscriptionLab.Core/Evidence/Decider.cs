using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>Finds, among what could still be looked at, what is expected to take most from the doubt between the three propositions. Ratios stay within their bounds, so that nothing is promised which would not be claimed afterwards.</summary>
/// <param name="items">What was seen.</param>
/// <param name="rows">Rows of the list for the house.</param>
/// <param name="prior">The user's odds; null where none were given.</param>
/// <param name="options">Bounds.</param>
internal sealed class Decider(ImmutableArray<EvidenceItem> items, int rows, PriorOdds? prior, EvidenceOptions options)
{
    /// <summary>Least that an observation must be expected to take from the doubt, in bits.</summary>
    private const double LeastSaved = 0.01;

    private static readonly PriorOdds Equal = new(1.0 / 3, 1.0 / 3, 1.0 / 3, "1:1:1");

    private readonly RatioBounds _bounds = new(options, rows);

    internal DecidingObservation? Next(IEnumerable<OpenFeature> open)
    {
        var ratios = _bounds.Together([.. items.Select(item => item.Weight)]);
        var now = Posterior.Of(prior ?? Equal, ratios);
        return open.Select(feature => Weigh(feature, now))
            .Append(AnotherRow(ratios, now))
            .OfType<DecidingObservation>()
            .Where(next => next.BitsExpected <= next.BitsNow - LeastSaved)
            .OrderBy(next => next.BitsExpected)
            .FirstOrDefault();
    }

    private DecidingObservation Weigh(OpenFeature feature, Posterior now)
    {
        var propositions = Enum.GetValues<Proposition>();
        var under = propositions.Select(feature.Under).ToArray();
        var (expected, found) = (0.0, 0.0);
        var answers = new List<string>();
        ImmutableArray<FeatureWeight> others = [.. items.Where(item => item.Weight.Feature != feature.Feature).Select(item => item.Weight)];
        for (var index = 0; index < feature.Answers.Length; index++)
        {
            var probability = propositions.Select((proposition, at) => Share(now, proposition) * under[at][index]).Sum();
            var after = _bounds.Together([.. others, feature.Answers[index].Weight]);
            expected += probability * Bits(Posterior.Of(prior ?? Equal, after));
            found += probability;
            answers.Add($"{ConstructionRecord.Plain(feature.Answers[index].Weight.Observation)}: {Words(after)}");
        }

        return new DecidingObservation(feature.What, Bits(now), expected + ((1 - found) * Bits(now)), string.Join("; ", answers), prior is not null);
    }

    /// <summary>Where the number of rows holds the ratios back, a documented piece more in the list would let them say more.</summary>
    private DecidingObservation? AnotherRow(ImmutableArray<PairRatio> ratios, Posterior now)
    {
        if (!ratios.Any(ratio => ratio.IsCapped))
        {
            return null;
        }

        var after = new RatioBounds(options, rows + 1).Together([.. items.Select(item => item.Weight)]);
        return new DecidingObservation("no more of this piece, but one more documented piece of the house in the list", Bits(now), Bits(Posterior.Of(prior ?? Equal, after)), Words(after), prior is not null);
    }

    private static double Share(Posterior posterior, Proposition proposition) => proposition switch
    {
        Proposition.House => posterior.House,
        Proposition.PeriodOther => posterior.Period,
        _ => posterior.Modern,
    };

    private static double Bits(Posterior posterior) => -new[] { posterior.House, posterior.Period, posterior.Modern }.Sum(share => share > 0 ? share * Math.Log2(share) : 0);

    private static string Words(ImmutableArray<PairRatio> ratios) => $"the house {Times(ratios[0])} against another of its time, {Times(ratios[1])} against a modern piece";

    private static string Times(PairRatio ratio) => ratio.Log10Ratio >= 0
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Pow(10, ratio.Log10Ratio):0.0} to 1")
        : string.Create(CultureInfo.InvariantCulture, $"1 to {Math.Pow(10, -ratio.Log10Ratio):0.0}");
}
