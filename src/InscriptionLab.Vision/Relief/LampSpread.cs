using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Reliefs;

namespace InscriptionLab.Vision.Relief;

/// <summary>How lamps differ over the metal: in which direction most, and by how much across it; in tangents of the angle to the metal's normal.</summary>
/// <param name="Most">Largest spread (root mean square).</param>
/// <param name="Least">Spread across it.</param>
/// <param name="X">Direction of the largest spread, part along the axis.</param>
/// <param name="Y">Its part along the arc.</param>
internal readonly record struct LampSpread(double Most, double Least, double X, double Y)
{
    internal static LampSpread Of(IReadOnlyList<Lamp> lamps, Angle around, double leastLit)
    {
        var tangents = lamps.Select(lamp => lamp.At(around)).Select(at => (X: at.X / Math.Max(at.Z, leastLit), Y: at.Y / Math.Max(at.Z, leastLit))).ToList();
        var (meanX, meanY) = (tangents.Average(at => at.X), tangents.Average(at => at.Y));
        var xx = tangents.Average(at => (at.X - meanX) * (at.X - meanX));
        var xy = tangents.Average(at => (at.X - meanX) * (at.Y - meanY));
        var yy = tangents.Average(at => (at.Y - meanY) * (at.Y - meanY));
        var root = Math.Sqrt(((xx - yy) * (xx - yy) / 4) + (xy * xy));
        var angle = Math.Atan2(2 * xy, xx - yy) / 2;
        return new LampSpread(Math.Sqrt(((xx + yy) / 2) + root), Math.Sqrt(Math.Max(0, ((xx + yy) / 2) - root)), Math.Cos(angle), Math.Sin(angle));
    }
}
