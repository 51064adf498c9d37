namespace InscriptionLab.Page.Answers;

/// <summary>How alike a line looks.</summary>
/// <param name="Line">The line, from 0.</param>
/// <param name="Likeness">1 for the same picture.</param>
internal sealed record AlikeAnswer(int Line, double Likeness);
