namespace InscriptionLab.App.Reports;

/// <summary>One model that the program used.</summary>
/// <param name="Name">File name or name.</param>
/// <param name="Sha256">SHA-256 of the file.</param>
internal sealed record ModelFact(string Name, string Sha256);
