using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>A point at which light and dark meet crosswise.</summary>
/// <param name="At">Where it is.</param>
/// <param name="Strength">How strongly light and dark alternate round it.</param>
/// <param name="Bright">Direction of the bright quarters in radians, in [0, π).</param>
internal readonly record struct SaddlePoint(PixelPoint At, double Strength, double Bright);
