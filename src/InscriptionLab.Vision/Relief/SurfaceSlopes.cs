namespace InscriptionLab.Vision.Relief;

/// <summary>Slopes of a surface against the cylinder, and its albedo, pixel by pixel.</summary>
/// <param name="AlongAxis">Rise to the right, per pixel.</param>
/// <param name="AlongArc">Rise downward in the strip, per pixel.</param>
/// <param name="Albedo">Brightness whatever the lamp.</param>
internal sealed record SurfaceSlopes(float[] AlongAxis, float[] AlongArc, float[] Albedo);
