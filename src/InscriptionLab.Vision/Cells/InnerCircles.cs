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

    /// <summary>Largest stop, as a share of the clear aperture: a larger one cannot be told from the far end of the bore.</summary>
    private const double LargestStop = 0.9;

    /// <summary>Depths below the rim looked at, in millimetres.</summary>
    private static readonly double[] Depths = [0, 0.75, 1.5, 2.25, 3, 3.75, 4.5, 5.5, 7];

    /// <summary>Circles of each kind whose edges are traced, the strongest first.</summary>
    private const int MostTraced = 8;

    /// <summary>Radii nearer than this share are taken for one circle seen at several depths.</summary>
    private const double SameRadius = 0.02;

    /// <summary>Two edges nearer than this share may be the near and the far end of one bore: a bore 8 mm deep is seen 4 % narrower at its end from 200 mm (computed).</summary>
    private const double FarEndShare = 1.08;

    /// <summary>Least quality of the near end's trace, as a share of the far end's.</summary>
    private const double RimQualityShare = 0.6;

    /// <summary>How far an edge may lie from the circle first found, and its centre from the circle's, in pixels.</summary>
    private const double Reach = 5;
    private const double Wave = 3;

    /// <summary>Finds and traces the circles, the clear aperture first; a circle that is not seen is left out. What else was traced is told as well.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="camera">Camera of the scene.</param>
    /// <param name="outer">Outer circle of the scene.</param>
    /// <param name="options">How strong and how well traced an edge must be.</param>
    /// <param name="cancel">Stops the search.</param>
    internal static InnerFinds Find(LightPicture picture, PlaneCamera camera, SceneCircle outer, CellMeasurerOptions options, CancellationToken cancel)
    {
        var peaks = new List<(double Radius, double Depth, double Strength)>();
        foreach (var depth in Depths)
        {
            cancel.ThrowIfCancellationRequested();
            var centre = outer.Centre with { Z = outer.Centre.Z + depth };
            var field = PolarField.Of(picture, camera, centre, Smallest * outer.Radius, Largest * outer.Radius);
            peaks.AddRange(Peaks(field).Select(p => (p.Radius, depth, p.Strength)).Where(p => p.Strength >= options.InnerStrength));
        }

        var tracer = new CircleTracer(picture);
        InnerCircle[] Traced(CircleRole role, IEnumerable<(double Radius, double Depth, double Strength)> among) =>
        [
            .. Distinct(among)
                .Select(p => Trace(tracer, camera, outer, role, p.Radius, p.Depth))
                .OfType<InnerCircle>()
                .Where(c => c.Trace.Quality >= options.InnerQuality),
        ];

        var clears = Traced(CircleRole.Clear, peaks.Where(p => p.Depth == 0 && p.Radius >= SmallestClear * outer.Radius));
        var stops = clears.Select(clear => Traced(CircleRole.Stop, peaks.Where(p => p.Radius <= LargestStop * clear.Radius))).ToList();
        var chosen = clears.Zip(stops, Pair)
            .OrderByDescending(pair => pair.Sum(c => c.Trace.Quality))
            .Select(pair => AtTheRim(pair, clears))
            .FirstOrDefault() ?? [];
        return new InnerFinds(chosen, Others(chosen, [.. clears, .. stops.SelectMany(found => found)]));
    }

    /// <summary>Keeps of all traced circles those that are neither chosen nor seen twice.</summary>
    private static List<InnerCircle> Others(List<InnerCircle> chosen, IEnumerable<InnerCircle> traced)
    {
        var others = new List<InnerCircle>();
        foreach (var circle in traced.OrderByDescending(circle => circle.Trace.Quality))
        {
            if (!chosen.Concat(others).Any(known => System.Math.Abs(known.Radius - circle.Radius) < SameRadius * circle.Radius))
            {
                others.Add(circle);
            }
        }

        return [.. others.OrderByDescending(circle => circle.Radius)];
    }

    /// <summary>Takes the rim's own edge where the far end of the bore, seen a little smaller, was traced better.</summary>
    private static List<InnerCircle> AtTheRim(List<InnerCircle> pair, InnerCircle[] clears)
    {
        var rim = clears
            .Where(c => c.Radius > pair[0].Radius && c.Radius < FarEndShare * pair[0].Radius && c.Trace.Quality >= RimQualityShare * pair[0].Trace.Quality)
            .MaxBy(c => c.Radius);
        return rim is null ? pair : [rim, .. pair.Skip(1)];
    }

    private static List<InnerCircle> Pair(InnerCircle clear, InnerCircle[] stops) =>
        stops.MaxBy(s => s.Trace.Quality) is { } stop ? [clear, stop] : [clear];

    private static List<(double Radius, double Depth)> Distinct(IEnumerable<(double Radius, double Depth, double Strength)> peaks)
    {
        var distinct = new List<(double Radius, double Depth)>();
        foreach (var (radius, depth, _) in peaks.OrderByDescending(p => p.Strength))
        {
            if (distinct.Count < MostTraced && !distinct.Any(d => System.Math.Abs(d.Radius - radius) < SameRadius * radius))
            {
                distinct.Add((radius, depth));
            }
        }

        return distinct;
    }

    private static InnerCircle? Trace(CircleTracer tracer, PlaneCamera camera, SceneCircle outer, CircleRole role, double radius, double depth)
    {
        var centre = outer.Centre with { Z = outer.Centre.Z + depth };
        var curve = ClosedCurve.Of(camera, centre, radius, ClosedCurve.PointsFor(radius * camera.PixelsPerMillimetre(centre)));
        return tracer.Trace(curve, Reach, 1, Wave) is { } trace ? new InnerCircle(role, radius, depth, trace) : null;
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
