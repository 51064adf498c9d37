namespace InscriptionLab.Vision.Strips;

/// <summary>How the tube moved from one photo to the next.</summary>
/// <param name="Turn">Radians; positive toward the lower side of the strip.</param>
/// <param name="Axial">Radii along the axis.</param>
/// <param name="Agreement">Correlation of details.</param>
internal sealed record TurnStep(double Turn, double Axial, double Agreement);
