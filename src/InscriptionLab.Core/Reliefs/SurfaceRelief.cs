using System.Collections.Immutable;
using InscriptionLab.Imaging;
using InscriptionLab.Strips;

namespace InscriptionLab.Reliefs;

/// <summary>The form of a tube's surface at the scale of lettering, from photos under several lamps, in the strip's pixels. Depths and albedo are relative: they compare places of one strip, and no two strips.</summary>
/// <param name="Map">Leads from the strip to the photos, which were taken from one place.</param>
/// <param name="Kind">What the lamps could tell.</param>
/// <param name="NormalX">Part of the unit normal along the axis; zero where the surface is the cylinder's.</param>
/// <param name="NormalY">Part of the unit normal along the arc, downward; zero where the surface is the cylinder's.</param>
/// <param name="Albedo">How bright the metal is whatever the lamp, 1 in the median.</param>
/// <param name="Height">Height over the cylinder in strip pixels times an unknown factor; grooves are negative. What is wider than a few letters is left out.</param>
/// <param name="Lamps">The lamps, one a photo.</param>
/// <param name="LampsGiven">True where the user said where the lamps stood; otherwise the shading of the tube tells.</param>
public sealed record SurfaceRelief(
    CylinderStripMap Map,
    ReliefKind Kind,
    FloatImage NormalX,
    FloatImage NormalY,
    FloatImage Albedo,
    FloatImage Height,
    ImmutableArray<Lamp> Lamps,
    bool LampsGiven);
