namespace InscriptionLab.Page.Answers;

/// <summary>The reference list in short.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Forms">Number of forms.</param>
/// <param name="Demonstration">True for the demonstration list of invented makers.</param>
internal sealed record ListAnswer(string Name, int Forms, bool Demonstration);
