using System.Collections.Generic;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Which of some edges are shadows of which, each looked at once: every pair of outlines asks for the same ones.</summary>
/// <param name="profiles">The profiles.</param>
/// <param name="lines">The edges.</param>
internal sealed class ShadowEdges(TurnedProfiles profiles, IReadOnlyList<EdgeLine> lines)
{
    /// <summary>What is known of each outer edge, inner edge and side, in this order.</summary>
    private readonly bool?[] _known = new bool?[2 * lines.Count * lines.Count];

    /// <summary>Gets the edges.</summary>
    internal IReadOnlyList<EdgeLine> Lines => lines;

    /// <summary>Gives a value indicating whether the band between two edges is a shadow, as <see cref="ShadowEdge.Between"/> does.</summary>
    /// <param name="outer">Index of the edge farther from the tube's axis.</param>
    /// <param name="inner">Index of the edge nearer to it.</param>
    /// <param name="side">-1 above the axis, +1 below it.</param>
    internal bool Between(int outer, int inner, int side) =>
        _known[(2 * ((outer * lines.Count) + inner)) + ((side + 1) / 2)] ??= ShadowEdge.Between(profiles, lines[outer], lines[inner], side);
}
