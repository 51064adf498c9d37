namespace InscriptionLab.Measures;

/// <summary>A measured length as the GUM (JCGM 100:2008, clause 7.2) asks for it: value, expanded uncertainty, coverage factor.</summary>
/// <param name="Value">Best estimate.</param>
/// <param name="ExpandedUncertainty">Expanded uncertainty U = k u_c.</param>
/// <param name="CoverageFactor">Coverage factor k, a pure number.</param>
public sealed record Measured(Length Value, Length ExpandedUncertainty, double CoverageFactor);
