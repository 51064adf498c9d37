using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>A corner of a flat board whose place on the board is known.</summary>
/// <param name="Board">Which board, from 0; all lie in one plane, but only points of one board have known distances.</param>
/// <param name="X">Place on the board in millimetres, along its first side.</param>
/// <param name="Y">Place on the board in millimetres, turned from X as the picture's Y from its X.</param>
/// <param name="At">Where the upright photo shows it.</param>
public readonly record struct CornerObservation(int Board, double X, double Y, PixelPoint At);
