using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>The weighing under three propositions.</summary>
/// <param name="Propositions">The three, each with its letter.</param>
/// <param name="Items">What was seen.</param>
/// <param name="Sentences">All together, and what was recorded of the construction.</param>
/// <param name="Scale">The words for ratios.</param>
internal sealed record EvidenceAnswer(
    ImmutableArray<string> Propositions,
    ImmutableArray<EvidenceItemAnswer> Items,
    ImmutableArray<string> Sentences,
    ImmutableArray<string> Scale)
{
    /// <summary>Gets the years; null where nothing tells of any.</summary>
    public YearsAnswer? Years { get; init; }
}
