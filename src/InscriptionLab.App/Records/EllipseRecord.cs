using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>An ellipse in the photo.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="SemiAxes">Longer and shorter semi-axis in pixels.</param>
/// <param name="AngleDeg">Direction of the longer one, from the X axis toward the Y axis (clockwise as seen).</param>
internal sealed record EllipseRecord(ImmutableArray<double> Centre, ImmutableArray<double> SemiAxes, double AngleDeg);
