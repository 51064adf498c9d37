using System.Collections.Immutable;
using InscriptionLab.Findings;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A finding as a paper shows it.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Reasons">Reasons.</param>
/// <param name="CannotDecide">What stays open.</param>
/// <param name="Retake">How to photograph it again.</param>
/// <param name="Forms">Nearest forms.</param>
internal sealed record PaperFinding(
    FindingOutcome Outcome,
    ImmutableArray<string> Reasons,
    ImmutableArray<string> CannotDecide,
    ImmutableArray<string> Retake,
    ImmutableArray<PaperForm> Forms);
