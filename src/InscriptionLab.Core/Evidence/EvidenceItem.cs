namespace InscriptionLab.Evidence;

/// <summary>One feature of the lettering as evidence.</summary>
/// <param name="Statement">What was seen, in one sentence.</param>
/// <param name="Weight">The row of the table that weighs it.</param>
public sealed record EvidenceItem(string Statement, FeatureWeight Weight);
