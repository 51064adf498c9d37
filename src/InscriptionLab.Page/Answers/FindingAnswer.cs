using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>A finding.</summary>
/// <param name="Outcome">agrees, differs, undecided or nothing-read.</param>
/// <param name="Nearest">Nearest forms.</param>
/// <param name="Reasons">Plain sentences.</param>
/// <param name="CannotDecide">What the photo leaves open.</param>
/// <param name="Retake">How to photograph it again.</param>
internal sealed record FindingAnswer(
    string Outcome,
    ImmutableArray<NearestAnswer> Nearest,
    ImmutableArray<string> Reasons,
    ImmutableArray<string> CannotDecide,
    ImmutableArray<string> Retake)
{
    /// <summary>Gets the weighing under three propositions; null where nothing speaks.</summary>
    public EvidenceAnswer? Evidence { get; init; }
}
