using System.Collections.Immutable;

namespace InscriptionLab.Evidence;

/// <summary>Several features of the lettering under three propositions: ratios, never probabilities, since the odds beforehand belong to the reader.</summary>
/// <param name="House">The house that the lettering names, as the list calls it; null where no form is near.</param>
/// <param name="Rows">Rows that the list has for the house: what the ratios can rest on.</param>
/// <param name="Items">What was seen; empty where nothing speaks.</param>
/// <param name="Ratios">Each pair of propositions; empty where nothing speaks.</param>
/// <param name="Dating">The years.</param>
/// <param name="Sentences">All of it in sentences.</param>
public sealed record EvidenceReport(
    string? House,
    int Rows,
    ImmutableArray<EvidenceItem> Items,
    ImmutableArray<PairRatio> Ratios,
    Dating Dating,
    ImmutableArray<string> Sentences);
