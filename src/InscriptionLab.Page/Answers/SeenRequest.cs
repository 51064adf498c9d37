namespace InscriptionLab.Page.Answers;

/// <summary>An answer to a question of the checklist, as the page sends it.</summary>
/// <param name="Person">Who saw it.</param>
/// <param name="Feature">The question.</param>
/// <param name="Observation">The answer; null or empty to leave the question open again.</param>
internal sealed record SeenRequest(string? Person, string? Feature, string? Observation);
