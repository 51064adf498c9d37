using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>One measured circle of a lens cell.</summary>
/// <param name="Role">What the circle is.</param>
/// <param name="Diameter">Diameter with its uncertainty.</param>
/// <param name="Ellipse">The circle's image in the upright photo.</param>
public sealed record CellCircle(CircleRole Role, Measured Diameter, PixelEllipse Ellipse);
