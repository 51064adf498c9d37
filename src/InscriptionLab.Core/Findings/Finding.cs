using System.Collections.Immutable;
using InscriptionLab.Comparison;

namespace InscriptionLab.Findings;

/// <summary>The reasoned result: evidence, never a certificate.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Nearest">Nearest forms of the list, nearest first; may be empty.</param>
/// <param name="Reasons">Plain sentences, each checkable by the user.</param>
/// <param name="CannotDecide">What this photo leaves open; may be empty.</param>
/// <param name="Retake">How to photograph it again so that more can be said; may be empty.</param>
public sealed record Finding(
    FindingOutcome Outcome,
    ImmutableArray<NearestForm> Nearest,
    ImmutableArray<string> Reasons,
    ImmutableArray<string> CannotDecide,
    ImmutableArray<string> Retake)
{
    /// <summary>Gets the form that the outcome turns on; null where no form is near or nothing was read.</summary>
    public NearestForm? Leading { get; init; }

    /// <summary>Gets what the reader of the finding must know to use it rightly and to leave the piece unharmed.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];
}
