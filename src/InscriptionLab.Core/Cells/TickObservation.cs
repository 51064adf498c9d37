using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>A point on a tick of a rule: how far along the rule is known, how far across is not.</summary>
/// <param name="X">Distance from the first tick in millimetres, along the rule.</param>
/// <param name="At">Where the upright photo shows it.</param>
public readonly record struct TickObservation(double X, PixelPoint At);
