namespace InscriptionLab.Page.Answers;

/// <summary>A circle that a person placed.</summary>
/// <param name="Role">outer, clear or stop.</param>
/// <param name="Ellipse">Centre x and y, half axes, turn in degrees.</param>
/// <param name="ScalePixels">Pixels between the ends of a scale laid by hand; null for the scale found in the photo.</param>
/// <param name="ScaleMm">Millimetres between them.</param>
internal sealed record CircleAsked(string? Role, double[]? Ellipse, double? ScalePixels, double? ScaleMm);
