using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess;

/// <summary>Relative errors of the diameters of one group.</summary>
/// <param name="Group">What the diameters have in common.</param>
/// <param name="Errors">Absolute errors over true diameters.</param>
internal sealed record CellFigures(string Group, Spread Errors);
