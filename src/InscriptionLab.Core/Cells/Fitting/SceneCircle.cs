using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>One circle of the adjusted scene, in the scale's world frame.</summary>
/// <param name="Role">What the circle is.</param>
/// <param name="Centre">Centre in millimetres.</param>
/// <param name="Radius">Radius in millimetres.</param>
public sealed record SceneCircle(CircleRole Role, Vector3D Centre, double Radius);
