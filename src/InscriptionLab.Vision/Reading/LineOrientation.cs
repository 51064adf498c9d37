using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Reading;

/// <summary>Decides from the network's orientation output which lines are traced from the wrong end and whether the photo is a mirror image.</summary>
internal static class LineOrientation
{
    /// <summary>No line may say that something is less probable than this: one sure error must not outweigh all others.</summary>
    private const double Floor = 1e-3;

    /// <summary>A photo is mirrored or not, all lines together.</summary>
    internal static bool IsMirrored(IReadOnlyList<LineSight> sights) =>
        sights.Sum(sight => LogOdds(sight.Orientation[2] + sight.Orientation[3], sight.Orientation[0] + sight.Orientation[1])) > 0;

    /// <summary>Gives for each line whether it must be read from its other end.</summary>
    /// <param name="traces">Lines as traced.</param>
    /// <param name="sights">What the network saw in each.</param>
    /// <param name="mirrored">Whether the photo is mirrored.</param>
    /// <param name="ownOdds">Odds at which a line decides for itself.</param>
    internal static bool[] AreTurned(IReadOnlyList<LineTrace> traces, IReadOnlyList<LineSight> sights, bool mirrored, double ownOdds)
    {
        var own = sights.Select(sight => mirrored ? LogOdds(sight.Orientation[3], sight.Orientation[2]) : LogOdds(sight.Orientation[1], sight.Orientation[0])).ToArray();
        return [.. traces.Select((trace, index) => Math.Abs(own[index]) >= Math.Log(ownOdds)
            ? own[index] > 0
            : traces.Select((other, place) => Agreement(trace, other) * own[place]).Sum() > 0)];
    }

    private static double Agreement(LineTrace one, LineTrace other) => (one.Along.X * other.Along.X) + (one.Along.Y * other.Along.Y);

    private static double LogOdds(double yes, double no) => Math.Log(Math.Max(yes, Floor) / Math.Max(no, Floor));
}
