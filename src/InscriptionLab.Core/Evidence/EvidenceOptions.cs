namespace InscriptionLab.Evidence;

/// <summary>Bounds of the weighing of several features.</summary>
public sealed record EvidenceOptions
{
    /// <summary>Gets the decimal logarithm of the largest ratio that one feature may have.</summary>
    /// <value>Default 1, a ratio of 10: the weights are choices, not counts.</value>
    public double MaximumLog10OfFeature { get; init; } = 1;

    /// <summary>Gets the decimal logarithm of the largest ratio that one feature may have whose weights are the opinion of single persons.</summary>
    /// <value>Default 0.3, a ratio of 2: below "weak support" in the scale that goes with a report.</value>
    public double MaximumLog10OfOpinion { get; init; } = 0.3;

    /// <summary>Gets the decimal logarithm of the largest ratio of all features together.</summary>
    /// <value>Default 2, a ratio of 100; lowered to the number of rows that the list has for the house, since a ratio cannot rest on more cases than there are
    /// (caution after R v T [2010] EWCA Crim 2439 on ratios from imprecise collections).</value>
    public double MaximumLog10 { get; init; } = 2;

    /// <summary>Gets the probability from which the style of the lettering counts as known.</summary>
    /// <value>Default 0.8, as for a readable letter.</value>
    public double KnownStyle { get; init; } = 0.8;

    /// <summary>Gets the probability from which a letter counts where words are looked for.</summary>
    /// <value>Default 0.8, as for a readable letter.</value>
    public double ReadableLetter { get; init; } = 0.8;

    /// <summary>Gets the share of the pieces that the stated years are to cover.</summary>
    /// <value>Default 0.9: nine pieces in ten.</value>
    public double Coverage { get; init; } = 0.9;

    /// <summary>Gets the share of marks that are expected to have an address somewhere on the piece.</summary>
    /// <value>Default 0.5: a choice, common practice being that address and name often stand together; it only ranks what to look at next.</value>
    public double AddressShare { get; init; } = 0.5;

    /// <summary>Gets the share of pieces of late enough years that are expected to have one of the words that tell of a first year.</summary>
    /// <value>Default 0.2: a choice, such words being the exception; it only ranks what to look at next.</value>
    public double WordingShare { get; init; } = 0.2;

    /// <summary>Gets the first number that counts as a year cut in the mark.</summary>
    /// <value>Default 1600: before any telescope.</value>
    public int FirstYear { get; init; } = 1600;

    /// <summary>Gets the last number that counts as a year cut in the mark.</summary>
    /// <value>Default 1950; a serial number of four digits outside both is no year, one inside may be taken for one.</value>
    public int LastYear { get; init; } = 1950;
}
