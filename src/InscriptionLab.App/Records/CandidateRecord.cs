namespace InscriptionLab.App.Records;

/// <summary>One letter that may stand at a place; the empty string means "no letter here".</summary>
/// <param name="Char">The letter.</param>
/// <param name="Probability">How likely it is, 0 to 1.</param>
internal sealed record CandidateRecord(string Char, double Probability);
