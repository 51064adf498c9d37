namespace InscriptionLab.Page.Answers;

/// <summary>One feature as evidence.</summary>
/// <param name="Statement">What was seen.</param>
/// <param name="Ratios">Its ratios, two by two.</param>
/// <param name="Basis">What they rest on.</param>
/// <param name="WouldChange">What would change them.</param>
internal sealed record EvidenceItemAnswer(string Statement, string Ratios, string Basis, string WouldChange);
