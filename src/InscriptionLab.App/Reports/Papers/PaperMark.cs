using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A line on a picture.</summary>
/// <param name="Points">Its points in pixels, a pixel's centre having integer coordinates.</param>
/// <param name="Closed">True where the last point leads back to the first.</param>
internal sealed record PaperMark(ImmutableArray<PixelPoint> Points, bool Closed);
