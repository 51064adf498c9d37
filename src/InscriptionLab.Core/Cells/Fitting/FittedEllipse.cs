namespace InscriptionLab.Cells.Fitting;

/// <summary>An ellipse fitted to points; the unit is the points' own.</summary>
/// <param name="CentreX">X of the centre.</param>
/// <param name="CentreY">Y of the centre.</param>
/// <param name="SemiMajor">Longer semi-axis.</param>
/// <param name="SemiMinor">Shorter semi-axis.</param>
/// <param name="Rotation">Direction of the longer axis in radians, from the X axis toward the Y axis, in (-π/2, π/2].</param>
/// <param name="ResidualNorm">Root of the sum of squared orthogonal distances.</param>
public sealed record FittedEllipse(double CentreX, double CentreY, double SemiMajor, double SemiMinor, double Rotation, double ResidualNorm);
