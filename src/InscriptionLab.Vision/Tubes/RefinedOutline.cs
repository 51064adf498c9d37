using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A silhouette measured in the full-size photo.</summary>
/// <param name="Line">The straight line, between the feet of the coarse line's ends.</param>
/// <param name="Support">Share of the pieces of the line that lie on it, 0 to 1.</param>
internal sealed record RefinedOutline(PixelSegment Line, double Support);
