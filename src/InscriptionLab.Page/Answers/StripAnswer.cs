using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>The strip.</summary>
/// <param name="Key">Changes whenever the strip does; a correction of a line stands on it.</param>
/// <param name="Size">Columns and rows.</param>
/// <param name="Unrolled">False where there is no tube and the strip is the photo itself.</param>
/// <param name="Grid">Photo points of a grid of strip points, row by row, so that the page can lead from one to the other.</param>
/// <param name="GridSize">Columns and rows of the grid.</param>
internal sealed record StripAnswer(string Key, ImmutableArray<int> Size, bool Unrolled, ImmutableArray<double> Grid, ImmutableArray<int> GridSize);
