using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>A feature that could still be looked at, with its answers.</summary>
/// <param name="What">What to look at.</param>
/// <param name="Feature">Its name in the table of weights; an item of that name is replaced by the answer.</param>
/// <param name="Answers">Its answers, each with how probable the photo leaves it beside the others; 1 where the photo says nothing.</param>
/// <param name="Share">Share of pieces on which there is an answer; otherwise all stays as it is.</param>
internal sealed record OpenFeature(string What, string Feature, ImmutableArray<(FeatureWeight Weight, double Share)> Answers, double Share)
{
    /// <summary>Gives how probable each answer is under a proposition: the answers share the feature's share in proportion to their weights.</summary>
    internal double[] Under(Proposition proposition)
    {
        var sum = Answers.Sum(answer => answer.Share * answer.Weight.Under(proposition));
        return [.. Answers.Select(answer => Share * answer.Share * answer.Weight.Under(proposition) / sum)];
    }
}
