namespace InscriptionLab.Cells.Fitting;

/// <summary>A circle fitted to points; the unit is the points' own.</summary>
/// <param name="CentreX">X of the centre.</param>
/// <param name="CentreY">Y of the centre.</param>
/// <param name="Radius">Radius.</param>
/// <param name="ResidualNorm">Root of the sum of squared orthogonal distances.</param>
public sealed record FittedCircle(double CentreX, double CentreY, double Radius, double ResidualNorm);
