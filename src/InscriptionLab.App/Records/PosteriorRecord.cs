namespace InscriptionLab.App.Records;

/// <summary>Probabilities of the propositions for the odds that the user gave.</summary>
/// <param name="House">The house named had it cut.</param>
/// <param name="Period">Another had it cut in the house's time.</param>
/// <param name="Modern">It was cut for a modern decorative piece.</param>
internal sealed record PosteriorRecord(double House, double Period, double Modern);
