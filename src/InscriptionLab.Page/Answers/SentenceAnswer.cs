namespace InscriptionLab.Page.Answers;

/// <summary>What was done, in a sentence; empty where nothing was.</summary>
/// <param name="Sentence">The sentence.</param>
internal sealed record SentenceAnswer(string Sentence);
