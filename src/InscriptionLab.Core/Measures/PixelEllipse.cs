namespace InscriptionLab.Measures;

/// <summary>An ellipse in a picture. The default value is a single point.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="SemiMajor">Longer semi-axis.</param>
/// <param name="SemiMinor">Shorter semi-axis.</param>
/// <param name="Rotation">Direction of the longer axis, from the X axis toward the Y axis.</param>
public readonly record struct PixelEllipse(PixelPoint Centre, PixelLength SemiMajor, PixelLength SemiMinor, Angle Rotation);
