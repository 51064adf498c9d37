namespace InscriptionLab.Page.Answers;

/// <summary>Something with its probability.</summary>
/// <param name="Text">What; for letters, empty text means "no letter here".</param>
/// <param name="Probability">How likely it is.</param>
internal sealed record ChanceAnswer(string Text, double Probability);
