using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>
/// Traces the edge of one circle along a curve that lies within a few pixels of it: every profile across the curve offers its steepest places,
/// and the smooth closed line with most support among them is taken.
/// </summary>
internal sealed class CircleTracer
{
    /// <summary>Random lines tried.</summary>
    private const int Trials = 300;

    /// <summary>Seed of the random choice: the same photo gives the same result.</summary>
    private const int Seed = 4711;

    /// <summary>Farthest an edge may lie from the line when lines are compared, and when points are taken, in pixels.</summary>
    private const double SupportDistance = 0.9;

    /// <summary>Least slope in units of the ordinary slope of the surfaces round about.</summary>
    private const double SmallestSignificance = 1.5;

    /// <summary>Significance beyond which an edge counts no more: a glint shall not outvote the rest.</summary>
    private const double LargestSignificance = 6;
    private const int Refinements = 8;

    /// <summary>Width of the surfaces on both sides of the search from which the ordinary slope is taken, in pixels.</summary>
    private const double Beside = 4;

    /// <summary>No slope below this is an edge, in linear light a pixel: a step of one grey level in the dark is about this.</summary>
    private const double SmallestSlope = 2e-4;

    private readonly LightPicture _picture;

    internal CircleTracer(LightPicture picture) => _picture = picture;

    /// <summary>Traces the edge.</summary>
    /// <param name="curve">Points round the expected circle, evenly spaced.</param>
    /// <param name="reach">How far the edge may lie from the curve, in pixels.</param>
    /// <param name="halfWidth">Half width along the edge over which light is averaged, in pixels.</param>
    /// <param name="largestWave">How far the edge's centre may lie from the curve's, in pixels.</param>
    internal TracedCircle? Trace(CurvePoint[] curve, double reach, double halfWidth, double largestWave)
    {
        var offers = Offers(curve, reach, halfWidth);
        if (Line(offers, curve.Length, largestWave) is not { } line)
        {
            return null;
        }

        line = Refined(offers, line, curve.Length);
        var points = ImmutableArray.CreateBuilder<PixelPoint>();
        var square = 0.0;
        for (var i = 0; i < curve.Length; i++)
        {
            if (Nearest(offers[i], line.At(i, curve.Length), SupportDistance) is { } offer)
            {
                points.Add(new PixelPoint(curve[i].At.X + (offer.Place * curve[i].OutwardX), curve[i].At.Y + (offer.Place * curve[i].OutwardY)));
                var off = offer.Place - line.At(i, curve.Length);
                square += off * off;
            }
        }

        return points.Count == 0
            ? null
            : new TracedCircle(points.ToImmutable(), points.Count / (double)curve.Length, Math.Sqrt(square / points.Count));
    }

    private static Offer? Nearest(Offer[] offers, double expected, double within)
    {
        Offer? best = null;
        foreach (var offer in offers)
        {
            var distance = Math.Abs(offer.Place - expected);
            if (distance <= within && (best is null || distance < Math.Abs(best.Value.Place - expected)))
            {
                best = offer;
            }
        }

        return best;
    }

    private static Undulation? Line(Offer[][] offers, int count, double largestWave)
    {
        var filled = Enumerable.Range(0, count).Where(i => offers[i].Length > 0).ToArray();
        if (filled.Length < count / 8)
        {
            return null;
        }

#pragma warning disable CA5394 // A choice of edge points is no secret, and must repeat.
        var random = new Random(Seed);
        Undulation? best = null;
        var most = 0.0;
        var sample = new (int Index, double Place)[3];
        for (var trial = 0; trial < Trials; trial++)
        {
            for (var k = 0; k < sample.Length; k++)
            {
                var from = k * filled.Length / sample.Length;
                var index = filled[from + random.Next(((k + 1) * filled.Length / sample.Length) - from)];
                sample[k] = (index, offers[index][random.Next(offers[index].Length)].Place);
            }

            if (Undulation.Through(sample, count) is not { } line || Math.Max(Math.Abs(line.Cos1), Math.Abs(line.Sin1)) > largestWave)
            {
                continue;
            }

            var support = Support(offers, line, count);
            if (support > most)
            {
                (best, most) = (line, support);
            }
        }
#pragma warning restore CA5394

        return best;
    }

    private static double Support(Offer[][] offers, Undulation line, int count)
    {
        var support = 0.0;
        for (var i = 0; i < count; i++)
        {
            support += Nearest(offers[i], line.At(i, count), SupportDistance)?.Significance ?? 0;
        }

        return support;
    }

    private static Undulation Refined(Offer[][] offers, Undulation line, int count)
    {
        for (var round = 0; round < Refinements; round++)
        {
            var points = new List<(int Index, double Place, double Weight)>();
            for (var i = 0; i < count; i++)
            {
                if (Nearest(offers[i], line.At(i, count), SupportDistance) is { } offer)
                {
                    points.Add((i, offer.Place, offer.Significance));
                }
            }

            line = Undulation.Fit(points, count) ?? line;
        }

        return line;
    }

    private Offer[][] Offers(CurvePoint[] curve, double reach, double halfWidth)
    {
        var raw = new IReadOnlyList<(double Place, double Slope)>[curve.Length];
        var ordinary = new List<double>();
        for (var i = 0; i < curve.Length; i++)
        {
            var wide = _picture.Holds(curve[i].At.X, curve[i].At.Y, reach + Beside + 2)
                ? EdgeProfile.Across(_picture, curve[i].At, curve[i].OutwardX, curve[i].OutwardY, reach + Beside, halfWidth).Extrema()
                : [];
            raw[i] = [.. wide.Where(e => Math.Abs(e.Place) <= reach)];

            // What is ordinary is asked of the surfaces beside the edge: a blurred edge is often the only slope there is near the curve.
            foreach (var side in new[] { -1, 1 })
            {
                ordinary.Add(wide.Where(e => side * e.Place > reach).Select(e => Math.Abs(e.Slope)).DefaultIfEmpty(0).Max());
            }
        }

        ordinary.Sort();
        var noise = Math.Max(ordinary[ordinary.Count / 2], SmallestSlope);
        return
        [
            .. raw.Select(r => r
                .Where(e => Math.Abs(e.Slope) >= SmallestSignificance * noise)
                .Select(e => new Offer(e.Place, Math.Min(LargestSignificance, Math.Abs(e.Slope) / noise)))
                .ToArray()),
        ];
    }

    private readonly record struct Offer(double Place, double Significance);
}
