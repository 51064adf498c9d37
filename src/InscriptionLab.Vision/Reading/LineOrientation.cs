using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Reading;

/// <summary>
/// Decides which lines are traced from the wrong end and whether the photo is a mirror image. Each line is looked at in all four
/// orientations: numbers 0 to 3 are upright, turned by 180 degrees, mirrored, mirrored and turned. A line whose true orientation is o shows
/// o XOR c in the crop that was itself brought into orientation c.
/// </summary>
internal static class LineOrientation
{
    /// <summary>Orientations a line is looked at in.</summary>
    internal const int Count = 4;

    /// <summary>Bit of a turned line.</summary>
    internal const int Turned = 1;

    /// <summary>Bit of a mirrored line.</summary>
    internal const int Mirrored = 2;

    /// <summary>No look may say that something is less probable than this: one sure error must not outweigh all others.</summary>
    private const double Floor = 1e-3;

    /// <summary>What one look's word on the orientation counts, in natural logarithms; below 1 since the looks err together. Fitted with <see cref="ClearLetter"/> on drawn lines (models/training/README.md, "Which way up").</summary>
    private const double Word = 0.274;

    /// <summary>What a clearly read letter counts for the orientation in which it was read, in natural logarithms: most letters are none when they stand on their heads.</summary>
    private const double ClearLetter = 2.334;

    /// <summary>Natural logarithm of how often photos are mirror images, a guess: one in a hundred.</summary>
    private const double MirroredPrior = -4.6;

    /// <summary>Weighs the four orientations of one line.</summary>
    /// <param name="looks">What the network saw in the crop as traced, turned, mirrored, mirrored and turned; null where it did not look, at least one not null.</param>
    /// <returns>Log-weights of the line being upright, turned, mirrored, mirrored and turned as traced; a few looks count as much as four.</returns>
    internal static double[] Weigh(IReadOnlyList<LineSight?> looks)
    {
        var seen = Enumerable.Range(0, Count).Where(crop => looks[crop] is not null).ToList();
        var unseen = seen.Average(crop => looks[crop]!.ClearLetters);
        return [.. Enumerable.Range(0, Count).Select(orientation =>
            (ClearLetter * (looks[orientation]?.ClearLetters ?? unseen))
            + (Word * Count * seen.Average(crop => Math.Log(Math.Max(Floor, looks[crop]!.Orientation[orientation ^ crop])))))];
    }

    /// <summary>A photo is mirrored or not, all lines together.</summary>
    /// <param name="weights">Weights of each line.</param>
    internal static bool IsMirrored(IReadOnlyList<double[]> weights) =>
        MirroredPrior + weights.Sum(line => Math.Max(line[Mirrored], line[Mirrored | Turned]) - Math.Max(line[0], line[Turned])) > 0;

    /// <summary>Gets for each line whether it must be read from its other end.</summary>
    /// <param name="traces">Lines as traced.</param>
    /// <param name="weights">Weights of each line.</param>
    /// <param name="mirrored">Whether the photo is mirrored.</param>
    /// <param name="ownOdds">Odds at which a line decides for itself; below, parallel lines decide together.</param>
    internal static bool[] AreTurned(IReadOnlyList<LineTrace> traces, IReadOnlyList<double[]> weights, bool mirrored, double ownOdds)
    {
        var upright = mirrored ? Mirrored : 0;
        var own = weights.Select(line => line[upright | Turned] - line[upright]).ToArray();
        return [.. traces.Select((trace, index) => Math.Abs(own[index]) >= Math.Log(ownOdds)
            ? own[index] > 0
            : traces.Select((other, place) => Agreement(trace, other) * own[place]).Sum() > 0)];
    }

    private static double Agreement(LineTrace one, LineTrace other) => (one.Along.X * other.Along.X) + (one.Along.Y * other.Along.Y);
}
