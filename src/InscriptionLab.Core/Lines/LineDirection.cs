namespace InscriptionLab.Lines;

/// <summary>How a line of lettering runs on the tube, as the photo shows it.</summary>
/// <param name="Angle">Reading direction in the strip, from its X axis toward its Y axis.</param>
/// <param name="UpsideDown">True where the photo shows the lettering upside down.</param>
/// <param name="Mirrored">True where the photo is a mirror image.</param>
public sealed record LineDirection(Measures.Angle Angle, bool UpsideDown, bool Mirrored);
