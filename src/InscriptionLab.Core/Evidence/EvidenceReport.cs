using System.Collections.Immutable;

namespace InscriptionLab.Evidence;

/// <summary>Several features of lettering and piece under three propositions: ratios, and probabilities only for odds beforehand that the user gave.</summary>
/// <param name="House">The house that the lettering names, as the list calls it; null where no form is near.</param>
/// <param name="Rows">Rows that the list has for the house: what the ratios can rest on.</param>
/// <param name="Items">What was seen; empty where nothing speaks.</param>
/// <param name="Ratios">Each pair of propositions; empty where nothing speaks.</param>
/// <param name="Dating">The years.</param>
public sealed record EvidenceReport(
    string? House,
    int Rows,
    ImmutableArray<EvidenceItem> Items,
    ImmutableArray<PairRatio> Ratios,
    Dating Dating)
{
    /// <summary>Gets a report in which nothing was weighed.</summary>
    public static EvidenceReport Empty { get; } = new(null, 0, [], [], new Dating([], null));

    /// <summary>Gets the odds that the user gave; null where none.</summary>
    public PriorOdds? Prior { get; init; }

    /// <summary>Gets the probabilities for these odds; null where none were given or nothing speaks.</summary>
    public Posterior? Posterior { get; init; }

    /// <summary>Gets what the recorded construction means beyond years.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>Gets a second house named on the piece; null where there is none.</summary>
    public SecondName? Second { get; init; }

    /// <summary>Gets which observation not yet made would decide most between the propositions; null where none would.</summary>
    public DecidingObservation? Deciding { get; init; }

    /// <summary>Gets a value indicating whether there is anything to say.</summary>
    public bool IsEmpty => Items.IsEmpty && Dating.Statements.IsEmpty && Remarks.IsEmpty;

    /// <summary>Gets all of it in sentences.</summary>
    public ImmutableArray<string> Sentences => EvidenceSentences.Of(this);
}
