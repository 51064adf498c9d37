using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Relief;

/// <summary>The surface at one pixel.</summary>
/// <param name="Normal">Unit normal; X to the right, Y down, Z toward the viewer.</param>
/// <param name="Albedo">Brightness where the lamp stands square, in the unit of the levels.</param>
public readonly record struct ShadedPixel(Vector3D Normal, double Albedo);
