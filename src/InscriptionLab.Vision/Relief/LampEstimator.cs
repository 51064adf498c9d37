using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Relief;

/// <summary>
/// Where the lamps stood, from the photos alone. The shading of bare metal gives each lamp's angle round the axis. Along the axis a cylinder's shading says
/// nothing; there the grooves speak: a mix of the photos in which all cosines round the axis cancel shows slopes along the axis alone, its share in each
/// photo is the lamp's tangent along the axis, and scale and sign are those with which both slopes belong to one surface (their curl vanishes).
/// </summary>
internal sealed class LampEstimator(ReliefOptions options)
{
    /// <summary>Rows farther than this from the lettering are not looked at.</summary>
    private const double Reach = 30 * Math.PI / 180;

    /// <summary>Blur against noise, pixels.</summary>
    private const double Calm = 1.5;

    /// <summary>Levels that stand out farther from the ground are reflections or cast shadows.</summary>
    private const double Outlier = 0.7;

    /// <summary>How well the curl must vanish: correlation of the two mixed second derivatives.</summary>
    private const double LeastAgreement = 0.25;

    private const double SteepestTangent = 6;

    /// <summary>Growth of the light along the tube, in logarithms a radius, below which it tells no side: a lamp at 50 radii gives 0.04.</summary>
    private const double LeastGrowth = 0.02;

    /// <summary>Gives one lamp a photo.</summary>
    /// <param name="photos">Flattened photos, at least two.</param>
    /// <param name="map">The strip's map.</param>
    /// <param name="focus">Angle of the lettering round the axis.</param>
    internal ImmutableArray<Lamp> Find(IReadOnlyList<FlatLight> photos, CylinderStripMap map, Angle focus)
    {
        var around = photos.Select(photo => GroundShading.Around(photo, map, focus).Radians).ToArray();
        var tangents = (photos.Count >= 3 ? FromGrooves(photos, map, focus, around) : null) ?? FromUse(photos, map, focus, around);
        return [.. around.Zip(tangents, (angle, tangent) => new Lamp(Angle.FromRadians(angle), Angle.FromRadians(Math.Atan(Math.Clamp(tangent, -SteepestTangent, SteepestTangent)))))];
    }

    /// <summary>Where grooves do not give tangents: a raking lamp that does not stand beside the lettering stands along the tube, on the side toward which its light grows.</summary>
    private double[] FromUse(IReadOnlyList<FlatLight> photos, CylinderStripMap map, Angle focus, double[] around)
    {
        var growth = GroundShading.Along(photos, map, focus);
        if (growth.Max(Math.Abs) < LeastGrowth)
        {
            growth = photos.Count == 2 ? EitherEnd.Signs(photos[0], photos[1], map, focus, options.LongestWave * 2 * map.PixelsPerRadius) : new double[photos.Count];
        }

        return [.. around.Select((angle, i) =>
        {
            var beside = Math.Cos(angle - focus.Radians);
            var facing = Math.Sin(options.UsualHeight.Radians);
            return beside <= facing ? 0 : Math.Sign(growth[i]) * Math.Sqrt(1 - (facing / beside * (facing / beside))) / (facing / beside);
        })];
    }

    private static double[]? FromGrooves(IReadOnlyList<FlatLight> photos, CylinderStripMap map, Angle focus, double[] around)
    {
        var (width, height, count) = (photos[0].Width, photos[0].Height, photos.Count);
        var lit = Enumerable.Range(0, height).Select(row => map.ToSurface(new PixelPoint(0, row)).Around.Radians).ToArray();
        var top = Array.FindIndex(lit, angle => angle >= focus.Radians - Reach);
        var bottom = Array.FindLastIndex(lit, angle => angle <= focus.Radians + Reach);
        if (top < 0 || bottom - top < 8)
        {
            return null;
        }

        // What each photo shows beyond bare metal, times the cosine of bare metal.
        var signals = photos.Select((photo, i) =>
        {
            var values = new float[width * (bottom - top)];
            for (var at = 0; at < values.Length; at++)
            {
                var over = photo.Over[(top * width) + at];
                values[at] = over < 0 || Math.Abs(over - 1) > Outlier ? 0 : (float)((over - 1) * Math.Cos(around[i] - lit[top + (at / width)]));
            }

            return FlatLight.Blurred(values, width, bottom - top, Calm, Calm);
        }).ToArray();

        if (Mix(signals, around) is not { } mix)
        {
            return null;
        }

        var slope = Combined(signals, mix);
        var energy = slope.Sum(value => (double)value * value);
        var tangents = signals.Select(signal => -signal.Zip(slope, (one, other) => (double)one * other).Sum() / energy).ToArray();
        var across = Across(signals, around, lit, top, width, slope, tangents);
        var factor = Factor(slope, across, width);
        return factor is { } known ? Array.ConvertAll(tangents, tangent => tangent / known) : null;
    }

    /// <summary>The mix of photos in which the cosines round the axis cancel; of several, that which shows most.</summary>
    private static double[]? Mix(float[][] signals, double[] around)
    {
        var basis = new List<double[]>();
        double[][] start = [[.. around.Select(Math.Cos)], [.. around.Select(Math.Sin)], .. Enumerable.Range(0, around.Length).Select(i => Enumerable.Range(0, around.Length).Select(j => i == j ? 1.0 : 0).ToArray())];
        var known = 0;
        foreach (var (vector, index) in start.Select((vector, index) => (vector, index)))
        {
            var rest = vector.ToArray();
            foreach (var other in basis)
            {
                var dot = rest.Zip(other, (one, two) => one * two).Sum();
                rest = [.. rest.Zip(other, (one, two) => one - (dot * two))];
            }

            var norm = Math.Sqrt(rest.Sum(value => value * value));
            if (norm > 0.2)
            {
                basis.Add([.. rest.Select(value => value / norm)]);
                known += index < 2 ? 1 : 0;
            }
        }

        var free = basis.Skip(known).ToList();
        if (free.Count == 0)
        {
            return null;
        }

        var parts = free.Select(vector => Combined(signals, vector)).ToList();
        var covariance = parts.Select(one => parts.Select(other => one.Zip(other, (a, b) => (double)a * b).Sum()).ToArray()).ToArray();
        var weights = Enumerable.Repeat(1.0, free.Count).ToArray();
        for (var round = 0; round < 60; round++)
        {
            var next = covariance.Select(row => row.Zip(weights, (a, b) => a * b).Sum()).ToArray();
            var norm = Math.Sqrt(next.Sum(value => value * value));
            weights = norm > 0 ? [.. next.Select(value => value / norm)] : weights;
        }

        return [.. Enumerable.Range(0, around.Length).Select(i => free.Zip(weights, (vector, weight) => vector[i] * weight).Sum())];
    }

    /// <summary>Slopes along the arc once those along the axis are taken out: least squares of albedo and slope.</summary>
    private static float[] Across(float[][] signals, double[] around, double[] lit, int top, int width, float[] slope, double[] tangents)
    {
        var across = new float[slope.Length];
        for (var at = 0; at < across.Length; at++)
        {
            var (cc, cs, ss, cv, sv) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var i = 0; i < signals.Length; i++)
            {
                var (sin, cos) = Math.SinCos(around[i] - lit[top + (at / width)]);
                var value = signals[i][at] + (tangents[i] * slope[at]);
                (cc, cs, ss, cv, sv) = (cc + (cos * cos), cs - (cos * sin), ss + (sin * sin), cv + (cos * value), sv - (sin * value));
            }

            var determinant = (cc * ss) - (cs * cs);
            across[at] = determinant > 1e-3 ? (float)(((cc * sv) - (cs * cv)) / determinant) : 0;
        }

        return across;
    }

    /// <summary>What the slopes along the axis must be multiplied with so that both belong to one surface; null where they do not seem to.</summary>
    private static double? Factor(float[] along, float[] across, int width)
    {
        var (pp, pq, qq) = (0.0, 0.0, 0.0);
        for (var at = width + 1; at < along.Length - width - 1; at++)
        {
            var (p, q) = (along[at + width] - along[at - width], across[at + 1] - across[at - 1]);
            (pp, pq, qq) = (pp + (p * p), pq + (p * q), qq + (q * q));
        }

        return pp > 0 && qq > 0 && Math.Abs(pq) / Math.Sqrt(pp * qq) >= LeastAgreement ? Math.Sign(pq) * Math.Sqrt(qq / pp) : null;
    }

    private static float[] Combined(float[][] signals, double[] weights)
    {
        var sum = new float[signals[0].Length];
        for (var i = 0; i < signals.Length; i++)
        {
            for (var at = 0; at < sum.Length; at++)
            {
                sum[at] += (float)(weights[i] * signals[i][at]);
            }
        }

        return sum;
    }
}
