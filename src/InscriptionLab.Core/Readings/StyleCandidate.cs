using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>One lettering style that a line may be cut in.</summary>
/// <param name="Style">roman, italic, script, blackletter, didone or sans.</param>
/// <param name="Probability">Calibrated probability.</param>
public sealed record StyleCandidate(string Style, Probability Probability);
