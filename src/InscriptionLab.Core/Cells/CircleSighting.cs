using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>Points seen on the outline of one circle.</summary>
/// <param name="Role">What the circle is.</param>
/// <param name="Points">Edge points in the upright photo, in order round the circle.</param>
/// <param name="SeenShare">Share of the outline, 0 to 1, along which an edge was seen.</param>
/// <param name="BurntShare">Share of the points, 0 to 1, beside which the photo is burnt out, so that light spills over the edge.</param>
public sealed record CircleSighting(CircleRole Role, ImmutableArray<PixelPoint> Points, double SeenShare, double BurntShare);
