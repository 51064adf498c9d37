namespace InscriptionLab.App.Reports.Papers;

/// <summary>One letter of a line, spaces counted.</summary>
/// <param name="Character">The letter, "?" where it cannot be seen.</param>
/// <param name="Probability">How likely it is, 0 to 1.</param>
/// <param name="Others">What else may stand there, in words; empty where nothing else may.</param>
/// <param name="Picture">The letter as photographed; null where there is no picture of it.</param>
/// <param name="By">Who read it by hand; null where the program did.</param>
internal sealed record PaperLetter(string Character, double Probability, string Others, PaperCut? Picture, string? By);
