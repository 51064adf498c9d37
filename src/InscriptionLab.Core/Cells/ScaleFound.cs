using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>The scale found beside the cell.</summary>
/// <param name="Kind">Kind of scale.</param>
/// <param name="Size">Side of a square, distance of ticks or side of a marker that was used.</param>
/// <param name="SizeAssumed">True where the user did not give the size.</param>
/// <param name="AtCell">Pixels per millimetre at the cell's centre, in the plane of its rim, with the relative standard uncertainty (k = 1).</param>
/// <param name="Points">Corners, ticks or edge points that were used, in the upright photo.</param>
public sealed record ScaleFound(
    ScaleKind Kind,
    Length Size,
    bool SizeAssumed,
    ImageScale AtCell,
    ImmutableArray<PixelPoint> Points)
{
    /// <summary>Gets the source in one word: <c>card</c>, <c>checkerboard</c>, <c>rule</c>, <c>aruco</c>, <c>id1</c>, <c>disc</c> or <c>points</c>.</summary>
    public string Source => Kind switch
    {
        ScaleKind.Card => "card",
        ScaleKind.Checkerboard => "checkerboard",
        ScaleKind.Rule => "rule",
        ScaleKind.Aruco => "aruco",
        ScaleKind.Id1 => "id1",
        ScaleKind.Disc => "disc",
        _ => "points",
    };
}
