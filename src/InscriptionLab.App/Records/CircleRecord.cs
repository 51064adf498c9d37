namespace InscriptionLab.App.Records;

/// <summary>One measured circle.</summary>
/// <param name="Role">outer, clear or stop.</param>
/// <param name="DiameterMm">Diameter.</param>
/// <param name="ExpandedUncertaintyMm">Expanded uncertainty.</param>
/// <param name="CoverageFactor">Coverage factor k.</param>
/// <param name="Ellipse">The circle's image.</param>
internal sealed record CircleRecord(string Role, double DiameterMm, double ExpandedUncertaintyMm, double CoverageFactor, EllipseRecord Ellipse);
