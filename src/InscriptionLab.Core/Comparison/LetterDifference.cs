using InscriptionLab.Measures;

namespace InscriptionLab.Comparison;

/// <summary>One place where a reading and a form differ.</summary>
/// <param name="Attested">Letter of the form; empty where the reading has a letter too many.</param>
/// <param name="Read">Letter as read; empty where the reading lacks the letter; "?" where it cannot be read.</param>
/// <param name="Probability">Probability that the letters really differ here: that the letter cut is not <paramref name="Attested"/>.</param>
/// <param name="LineIndex">Line of the reading, from 0.</param>
/// <param name="LetterIndex">Index into the line's letters (spaces counted), or where the missing letter would stand.</param>
public sealed record LetterDifference(string Attested, string Read, Probability Probability, int LineIndex, int LetterIndex);
