namespace InscriptionLab.Cataloguing;

/// <summary>One measured diameter.</summary>
/// <param name="Role">outer, clear or stop.</param>
/// <param name="ValueMm">Best estimate in millimetres.</param>
/// <param name="ExpandedMm">Expanded uncertainty U = k u_c in millimetres.</param>
/// <param name="CoverageFactor">Coverage factor k.</param>
/// <param name="Scale">What gave the scale.</param>
/// <param name="Statement">The result in words, after the GUM.</param>
public sealed record MeasurementEntry(string Role, double ValueMm, double ExpandedMm, double CoverageFactor, string Scale, string Statement);
