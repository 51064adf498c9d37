using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Pictures;

/// <summary>A line to be drawn on a picture.</summary>
/// <param name="Points">Points in pixels of the picture, joined in order.</param>
/// <param name="Closed">True where the last point is joined to the first.</param>
/// <param name="Ink">What the line shows.</param>
public sealed record Mark(ImmutableArray<PixelPoint> Points, bool Closed, MarkInk Ink);
