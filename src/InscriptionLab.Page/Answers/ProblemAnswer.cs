namespace InscriptionLab.Page.Answers;

/// <summary>What went wrong, in one sentence.</summary>
/// <param name="Problem">The sentence.</param>
internal sealed record ProblemAnswer(string Problem);
