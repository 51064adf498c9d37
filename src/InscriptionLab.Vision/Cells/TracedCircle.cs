using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Edge points traced along a closed curve.</summary>
/// <param name="Points">Edge points in order round the curve.</param>
/// <param name="SeenShare">Share of the curve at which an edge was seen, 0 to 1.</param>
/// <param name="Scatter">Standard deviation of the edge points about the smooth line they follow, in pixels.</param>
internal sealed record TracedCircle(ImmutableArray<PixelPoint> Points, double SeenShare, double Scatter)
{
    /// <summary>Scatter added to every trace, in pixels: below it no trace is better than another.</summary>
    private const double ScatterFloor = 0.2;

    /// <summary>Gets how good the trace is: much of the outline seen, and smoothly. Pure number, larger is better.</summary>
    internal double Quality => SeenShare / (ScatterFloor + Scatter);
}
