using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>What a photo shows of a scale: points whose places on the scale are known wholly or in part.</summary>
/// <param name="Kind">Kind of scale.</param>
/// <param name="Size">Size of its unit that was used.</param>
/// <param name="SizeAssumed">True where the user did not give the size.</param>
/// <param name="Corners">Corners, to start from; empty for a rule.</param>
/// <param name="Edges">Points on edges or ticks, to measure by.</param>
/// <param name="Lines">Points on the rule's long edges; empty unless it is a rule.</param>
/// <param name="Outline">Polygon round the scale in the upright photo.</param>
public sealed record ScaleSighting(
    ScaleKind Kind,
    Length Size,
    bool SizeAssumed,
    ImmutableArray<CornerObservation> Corners,
    ImmutableArray<EdgeObservation> Edges,
    ImmutableArray<LineObservation> Lines,
    ImmutableArray<PixelPoint> Outline)
{
    /// <summary>Gets points on the edge of a disc whose diameter is the scale's size, in order round it; empty unless it is a disc.</summary>
    public ImmutableArray<PixelPoint> Round { get; init; } = [];

    /// <summary>Gets the standard uncertainty of one reading in pixels where it is known beforehand; null where the readings' own scatter tells.</summary>
    public double? ReadingPixels { get; init; }

    /// <summary>Gets the points that show the scale: corners, else edge points or ticks, else points round a disc.</summary>
    public ImmutableArray<PixelPoint> Shown => !Corners.IsEmpty ? [.. Corners.Select(c => c.At)] : !Edges.IsEmpty ? [.. Edges.Select(e => e.At)] : Round;

    /// <summary>Gets the middle of the readings in the picture.</summary>
    public PixelPoint Middle
    {
        get
        {
            ImmutableArray<PixelPoint> read = Edges.IsEmpty ? Round : [.. Edges.Select(e => e.At)];
            return new PixelPoint(read.Average(p => p.X), read.Average(p => p.Y));
        }
    }
}
