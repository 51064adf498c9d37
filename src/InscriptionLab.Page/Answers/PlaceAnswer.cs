namespace InscriptionLab.Page.Answers;

/// <summary>One place of a form beside the reading.</summary>
/// <param name="Attested">The form's letter; empty where the reading has one too many.</param>
/// <param name="Read">The letter as read; empty where it is missing.</param>
/// <param name="Differs">True where the two differ.</param>
/// <param name="Kind">In what way; empty where they do not.</param>
/// <param name="Probability">Probability that they really differ.</param>
/// <param name="Line">Line of the reading, from 0; -1 where unknown.</param>
/// <param name="Letter">Index of the letter in the line; -1 where unknown.</param>
internal sealed record PlaceAnswer(string Attested, string Read, bool Differs, string Kind, double Probability, int Line, int Letter);
