using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Looks for clear aperture and stop inside the outer rim: circles about the rim's axis, the clear aperture in the rim's plane, the stop in or below it.</summary>
internal static class InnerCircles
{
    /// <summary>Radii looked at, as shares of the outer radius.</summary>
    private const double Smallest = 0.1;
    private const double Largest = 0.97;

    /// <summary>Smallest clear aperture, as a share of the outer radius: a cell's rim is no wider than that.</summary>
    private const double SmallestClear = 0.35;

    /// <summary>Largest stop, as a share of the clear aperture.</summary>
    private const double LargestStop = 0.96;

    /// <summary>Depths below the rim looked at, in millimetres.</summary>
    private static readonly double[] Depths = [0, 0.75, 1.5, 2.25, 3, 3.75, 4.5, 5.5, 7];

    /// <summary>Finds the circles, the clear aperture first; a circle that is not seen is left out.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="camera">Camera of the scene.</param>
    /// <param name="outer">Outer circle of the scene.</param>
    /// <param name="smallestStrength">Least mean significance of an edge.</param>
    /// <param name="cancel">Stops the search.</param>
    internal static List<InnerCircle> Find(LightPicture picture, PlaneCamera camera, SceneCircle outer, double smallestStrength, CancellationToken cancel)
    {
        var peaks = new List<(double Radius, double Depth, double Strength)>();
        foreach (var depth in Depths)
        {
            cancel.ThrowIfCancellationRequested();
            var centre = outer.Centre with { Z = outer.Centre.Z + depth };
            var field = PolarField.Of(picture, camera, centre, Smallest * outer.Radius, Largest * outer.Radius);
            peaks.AddRange(Peaks(field).Select(p => (p.Radius, depth, p.Strength)).Where(p => p.Strength >= smallestStrength));
        }

        var clears = peaks.Where(p => p.Depth == 0 && p.Radius >= SmallestClear * outer.Radius).ToArray();
        (InnerCircle Clear, InnerCircle? Stop)? best = null;
        foreach (var clear in clears)
        {
            var first = new InnerCircle(CircleRole.Clear, clear.Radius, 0, clear.Strength);
            var inside = peaks.Where(p => p.Radius <= LargestStop * clear.Radius).OrderByDescending(p => p.Strength).ToArray();
            var second = inside.Length == 0 ? null : new InnerCircle(CircleRole.Stop, inside[0].Radius, inside[0].Depth, inside[0].Strength);
            if (best is null || first.Strength + (second?.Strength ?? 0) > best.Value.Clear.Strength + (best.Value.Stop?.Strength ?? 0))
            {
                best = (first, second);
            }
        }

        return best is not { } found ? [] : found.Stop is null ? [found.Clear] : [found.Clear, found.Stop];
    }

    private static IEnumerable<(double Radius, double Strength)> Peaks(PolarField field)
    {
        const int Near = 4;
        var strengths = field.Strengths;
        for (var i = Near; i < strengths.Length - Near; i++)
        {
            var peak = true;
            for (var k = -Near; k <= Near && peak; k++)
            {
                peak = strengths[i + k] < strengths[i] || (strengths[i + k] == strengths[i] && k >= 0);
            }

            if (peak)
            {
                yield return (field.FirstRadius + (i * field.Step), strengths[i]);
            }
        }
    }
}
