using InscriptionLab.Comparison;

namespace InscriptionLab.Evidence;

/// <summary>A second house that the piece names beside the one of the finding.</summary>
/// <param name="Nearest">Its form, laid over other letters of the reading.</param>
/// <param name="IsSpeltAsListed">True where every letter is that of the form; false where the form is only near.</param>
public sealed record SecondName(NearestForm Nearest, bool IsSpeltAsListed);
