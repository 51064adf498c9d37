namespace InscriptionLab.Outcomes;

/// <summary>Why a stage could not tell.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Sentence">One sentence for a person: what cannot be told and why.</param>
/// <param name="Remedy">One sentence: what to do about it.</param>
public sealed record Refusal(string Stage, string Sentence, string Remedy);
