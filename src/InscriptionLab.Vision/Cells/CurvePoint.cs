using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>A point of a closed curve in the picture with the unit direction that leads outward.</summary>
/// <param name="At">The point.</param>
/// <param name="OutwardX">X of the direction.</param>
/// <param name="OutwardY">Y of the direction.</param>
internal readonly record struct CurvePoint(PixelPoint At, double OutwardX, double OutwardY);
