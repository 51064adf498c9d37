namespace InscriptionLab.Page.Answers;

/// <summary>What a data set shall be like, as the page sends it; which examinations it takes is the search in the address.</summary>
/// <param name="Licence">Licence; null or empty where not stated.</param>
/// <param name="Seed">Changes which object falls into which part.</param>
/// <param name="Threshold">Mean likeness down to which groups of marks are joined.</param>
internal sealed record DatasetRequestAsked(string? Licence, int Seed, double Threshold);
