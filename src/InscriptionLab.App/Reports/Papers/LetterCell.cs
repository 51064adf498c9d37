namespace InscriptionLab.App.Reports.Papers;

/// <summary>One place of a line.</summary>
/// <param name="Picture">The letter as photographed; null where there is no picture of it.</param>
/// <param name="Read">As read; empty where the form has a letter that is not there.</param>
/// <param name="Form">The form's letter; empty where the reading has one too many.</param>
/// <param name="Sure">How sure the reading is, in words.</param>
/// <param name="Differs">True where reading and form differ.</param>
internal sealed record LetterCell(PaperCut? Picture, string Read, string Form, string Sure, bool Differs);
