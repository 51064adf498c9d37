using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Edge points traced along a closed curve.</summary>
/// <param name="Points">Edge points in order round the curve.</param>
/// <param name="SeenShare">Share of the curve at which an edge was seen, 0 to 1.</param>
/// <param name="MeanSlope">Mean slope of light at the edge points, outward, in linear light a pixel.</param>
internal sealed record TracedCircle(ImmutableArray<PixelPoint> Points, double SeenShare, double MeanSlope);
