using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>A point on a straight edge that runs along the rule, in the plane of its ticks.</summary>
/// <param name="Line">Which edge, from 0.</param>
/// <param name="At">Where the upright photo shows it.</param>
public readonly record struct LineObservation(int Line, PixelPoint At);
