using System;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Gives a camera to start from that looks straight at a rule.</summary>
internal static class RuleStart
{
    /// <summary>Gives the camera.</summary>
    /// <param name="rule">A rule with at least two ticks.</param>
    /// <param name="focal">Focal length in pixels.</param>
    /// <param name="principalPoint">Principal point.</param>
    internal static PlaneCamera Camera(ScaleSighting rule, double focal, PixelPoint principalPoint)
    {
        // Ticks fitted by picture = a + b X: b is the direction of the rule and its pixels a millimetre.
        var edges = rule.Edges.Where(e => e.AcrossX).ToArray();
        var (mv, mx, my) = (edges.Average(e => e.Value), edges.Average(e => e.At.X), edges.Average(e => e.At.Y));
        var spread = edges.Sum(e => (e.Value - mv) * (e.Value - mv));
        var bx = edges.Sum(e => (e.Value - mv) * (e.At.X - mx)) / spread;
        var by = edges.Sum(e => (e.Value - mv) * (e.At.Y - my)) / spread;
        var scale = Math.Sqrt((bx * bx) + (by * by));
        var (cos, sin) = (bx / scale, by / scale);
        var distance = focal / scale;
        var (ox, oy) = (mx - (bx * mv), my - (by * mv));
        return new PlaneCamera(
            focal,
            principalPoint,
            new Vector3D(cos, -sin, 0),
            new Vector3D(sin, cos, 0),
            new Vector3D(0, 0, 1),
            new Vector3D((ox - principalPoint.X) / scale, (oy - principalPoint.Y) / scale, distance));
    }
}
