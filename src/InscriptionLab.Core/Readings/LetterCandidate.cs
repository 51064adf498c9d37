using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>One letter that may stand at a place.</summary>
/// <param name="Character">One grapheme cluster, or two where two letters may stand in the place of one; never normalised to compatibility forms (no NFKC).</param>
/// <param name="Probability">Calibrated probability that this letter is cut there.</param>
public sealed record LetterCandidate(string Character, Probability Probability);
