using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>Where and how a ring is cut open to be laid flat.</summary>
/// <param name="Start">Angle of the strip's first column, clockwise as seen, from the longer axis of the rim's image.</param>
/// <param name="TopsOutward">True to show letters upright whose tops point away from the centre.</param>
/// <param name="Overlap">How far the strip goes on past a full turn.</param>
public sealed record RingCut(Angle Start, bool TopsOutward, Angle Overlap);
