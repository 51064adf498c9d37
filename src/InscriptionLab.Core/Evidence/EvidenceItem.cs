using System.Collections.Immutable;

namespace InscriptionLab.Evidence;

/// <summary>One feature of the lettering or the piece as evidence.</summary>
/// <param name="Statement">What was seen, in one sentence.</param>
/// <param name="Weight">The row of the table that weighs it; for a spelling that the photo leaves open, a mixture of rows.</param>
/// <param name="Ratios">Each pair of propositions, capped.</param>
public sealed record EvidenceItem(string Statement, FeatureWeight Weight, ImmutableArray<PairRatio> Ratios);
