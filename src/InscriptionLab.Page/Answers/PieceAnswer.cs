using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One piece as the page shows it.</summary>
/// <param name="Id">Name in addresses.</param>
/// <param name="Name">What the user calls it.</param>
/// <param name="Version">Grows with every change.</param>
/// <param name="Photos">Its photos.</param>
/// <param name="Corrections">What persons corrected, in order.</param>
/// <param name="CanRedo">True where something was undone that can come back.</param>
/// <param name="AskFor">Photos to ask a seller for.</param>
internal sealed record PieceAnswer(
    string Id,
    string Name,
    int Version,
    ImmutableArray<PhotoAnswer> Photos,
    ImmutableArray<CorrectionAnswer> Corrections,
    bool CanRedo,
    ImmutableArray<string> AskFor)
{
    /// <summary>Gets what the photos gave together.</summary>
    public JointAnswer Together { get; init; } = new(false, [], []);

    /// <summary>Gets what persons said of the piece: answers of the checklist, measured values, odds beforehand.</summary>
    public ImmutableArray<SeenAnswer> Seen { get; init; } = [];
}
