namespace InscriptionLab.Readings;

/// <summary>One spelling of a line with its probability.</summary>
/// <param name="Text">The spelling, exactly as the classes spell it.</param>
/// <param name="LogProbability">ln P(text | line), summed over all alignments.</param>
public sealed record CtcHypothesis(string Text, double LogProbability);
