using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>A point on an edge or tick whose place on the scale is known along one axis only.</summary>
/// <param name="Board">Which board, from 0; all lie in one plane, but only points of one board have known distances.</param>
/// <param name="AcrossX">True where the place along X is known, false where the place along Y is.</param>
/// <param name="Value">The known place in millimetres.</param>
/// <param name="Polarity">+1 where light grows with the coordinate, -1 where it falls, 0 for the middle of a tick: a blurred edge is seen too far on its bright side.</param>
/// <param name="At">Where the upright photo shows it.</param>
public readonly record struct EdgeObservation(int Board, bool AcrossX, double Value, int Polarity, PixelPoint At);
