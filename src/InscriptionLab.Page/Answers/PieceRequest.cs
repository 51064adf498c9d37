namespace InscriptionLab.Page.Answers;

/// <summary>A new piece.</summary>
/// <param name="Name">What the user calls it; null for a name of ours.</param>
internal sealed record PieceRequest(string? Name);
