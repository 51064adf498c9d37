namespace InscriptionLab.Vision.Cells;

/// <summary>A pixel at which the picture's colour changes most steeply along its own gradient.</summary>
/// <param name="X">Column in the search picture.</param>
/// <param name="Y">Row in the search picture.</param>
/// <param name="GradientX">X of the unit gradient.</param>
/// <param name="GradientY">Y of the unit gradient.</param>
/// <param name="Strength">Size of the gradient, grey levels a pixel.</param>
internal readonly record struct EdgePixel(int X, int Y, float GradientX, float GradientY, float Strength);
