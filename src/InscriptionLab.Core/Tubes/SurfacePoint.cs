using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>A point of a tube's surface. The default value is the point nearest the camera.</summary>
/// <param name="Axial">Position along the axis in radii, from the cross-section nearest the camera's centre, positive along the axis direction.</param>
/// <param name="Around">Angle round the axis, zero on the generatrix nearest the camera, positive toward the lower side of the picture for a tube that runs to the right.</param>
public readonly record struct SurfacePoint(double Axial, Angle Around);
