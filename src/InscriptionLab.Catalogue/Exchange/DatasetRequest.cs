namespace InscriptionLab.Exchange;

/// <summary>What data set is to be built.</summary>
/// <param name="Out">A new folder.</param>
/// <param name="Licence">Licence of the photos and of what is taken from them, as the user knows it; null where not known.</param>
/// <param name="Seed">Changes which object falls into which part.</param>
public sealed record DatasetRequest(string Out, string? Licence, int Seed);
