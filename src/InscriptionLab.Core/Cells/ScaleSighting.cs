using System.Collections.Immutable;
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
    ImmutableArray<PixelPoint> Outline);
