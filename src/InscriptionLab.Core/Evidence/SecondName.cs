using InscriptionLab.Comparison;

namespace InscriptionLab.Evidence;

/// <summary>A second house that the piece names beside the one of the finding.</summary>
/// <param name="Nearest">Its form, laid over other letters of the reading and the same letter by letter.</param>
public sealed record SecondName(NearestForm Nearest);
