using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Reads a rule whose row of ticks is known roughly: each tick is followed across the rule, and the long edges are measured.</summary>
internal static class RuleReading
{
    /// <summary>Distance of the rows in which ticks are read, in pixels.</summary>
    private const double RowDistance = 3;

    /// <summary>Rows are read as long as at least this share of the ticks is seen.</summary>
    private const double SmallestSeenShare = 0.15;

    /// <summary>Rows read to each side at most, in tick distances.</summary>
    private const double MostAcross = 12;

    /// <summary>How far a tick may lie from where it is expected, as a share of the tick distance.</summary>
    private const double Tolerance = 0.3;

    /// <summary>Least depth of a tick, as a share of the median depth in the first row.</summary>
    private const double SmallestDepthShare = 0.4;

    /// <summary>How far an edge may lie off the ticks' direction, in radians, and how far from the ticks, in tick distances.</summary>
    private const double EdgeTurn = 0.06;
    private const double EdgeDistance = 60;

    /// <summary>Shortest edge that counts, as a share of the row of ticks.</summary>
    private const double EdgeShare = 0.2;

    /// <summary>Pieces of edge nearer to one line than this, in pixels, are pieces of one edge.</summary>
    private const double SameEdge = 4;

    /// <summary>Distance of measured places along an edge, in pixels.</summary>
    private const double PlaceDistance = 4;
    private const double EdgeReach = 3;

    /// <summary>Least slope of an edge, in linear light a pixel.</summary>
    private const double SmallestSlope = 0.01;
    private const int FewestEdgePoints = 8;

    /// <summary>Reads the rule.</summary>
    internal static ScaleSighting? Of(LightPicture picture, TickRun run, IReadOnlyList<PixelSegment> segments, Length? size)
    {
        var pitch = size?.Millimetres ?? 1;
        var ticks = Ticks(picture, run, pitch);
        if (ticks.Count < TickRunFinder.FewestTicks)
        {
            return null;
        }

        var lines = Edges(picture, run, segments);
        return new ScaleSighting(ScaleKind.Rule, Length.FromMillimetres(pitch), size is null, [], [.. ticks], [.. lines], Outline(run, lines));
    }

    private static List<EdgeObservation> Ticks(LightPicture picture, TickRun run, double pitch)
    {
        var found = new List<EdgeObservation>();
        var first = Row(picture, run, run.Places.Select(p => ((int Number, double Along)?)p).ToArray(), 0, 0, run.Period);
        var depths = first.Where(f => f is not null).Select(f => f!.Value.Depth).Order().ToArray();
        if (depths.Length == 0)
        {
            return found;
        }

        var least = SmallestDepthShare * depths[depths.Length / 2];
        foreach (var side in new[] { 1, -1 })
        {
            var last = run.Places.Select(p => ((int Number, double Along)?)p).ToArray();
            for (var beside = side > 0 ? 0 : -RowDistance; Math.Abs(beside) < MostAcross * run.Period; beside += side * RowDistance)
            {
                var row = Row(picture, run, last, beside, least, run.Period);
                var seen = 0;
                for (var i = 0; i < row.Length; i++)
                {
                    if (row[i] is { } tick)
                    {
                        found.Add(new EdgeObservation(0, true, tick.Number * pitch, 0, run.At(tick.Along, beside)));
                        last[i] = (tick.Number, tick.Along);
                        seen++;
                    }
                    else
                    {
                        // A tick that ends is not taken up again: what follows is a figure or another mark.
                        last[i] = null;
                    }
                }

                if (seen < SmallestSeenShare * row.Length)
                {
                    break;
                }
            }
        }

        return found;
    }

    private static (int Number, double Along, double Depth)?[] Row(LightPicture picture, TickRun run, (int Number, double Along)?[] expected, double beside, double least, double period)
    {
        const double Step = 0.25;
        var reach = Tolerance * period;
        var count = (int)(reach / Step);
        var row = new (int, double, double)?[expected.Length];
        for (var i = 0; i < row.Length; i++)
        {
            if (expected[i] is not { } tick)
            {
                continue;
            }

            // The tick's middle is where the light, smoothed over about a tick's width, is lowest.
            double Light(double along)
            {
                var sum = 0.0;
                for (var k = -2; k <= 2; k++)
                {
                    var at = run.At(along + (k * Step), beside);
                    sum += picture.At(at.X, at.Y) * (3 - Math.Abs(k)) / 9;
                }

                return run.Sign * sum;
            }

            var (best, lowest) = (0, double.PositiveInfinity);
            for (var k = -count; k <= count; k++)
            {
                var light = Light(tick.Along + (k * Step));
                if (light < lowest)
                {
                    (best, lowest) = (k, light);
                }
            }

            if (Math.Abs(best) == count)
            {
                continue;
            }

            var middle = tick.Along + (best * Step);
            var (l, r) = (Light(middle - (2 * Step)), Light(middle + (2 * Step)));
            var curvature = l - (2 * lowest) + r;
            var shift = curvature > 0 ? Step * (l - r) / curvature : 0;
            var depth = ((Light(middle - (period / 2)) + Light(middle + (period / 2))) / 2) - lowest;
            if (depth > least && Math.Abs(shift) <= 2 * Step)
            {
                row[i] = (tick.Number, middle + shift, depth);
            }
        }

        return row;
    }

    private static List<LineObservation> Edges(LightPicture picture, TickRun run, IReadOnlyList<PixelSegment> segments)
    {
        var found = new List<LineObservation>();
        var (from, to) = (run.Places[0].Along, run.Places[^1].Along);
        var line = 0;
        var used = new List<PixelSegment>();
        foreach (var segment in segments)
        {
            var length = segment.Length.Pixels;
            var (ux, uy) = ((segment.End.X - segment.Start.X) / length, (segment.End.Y - segment.Start.Y) / length);
            var middle = new PixelPoint((segment.Start.X + segment.End.X) / 2, (segment.Start.Y + segment.End.Y) / 2);
            var turn = Math.Abs((ux * run.DirectionY) - (uy * run.DirectionX));
            var (ox, oy) = (middle.X - run.Origin.X, middle.Y - run.Origin.Y);
            var along = (ox * run.DirectionX) + (oy * run.DirectionY);
            var beside = (oy * run.DirectionX) - (ox * run.DirectionY);
            var margin = 0.2 * (to - from);
            if (turn > EdgeTurn || length < EdgeShare * (to - from) || along < from - margin || along > to + margin || Math.Abs(beside) > EdgeDistance * run.Period || used.Any(u => OnLine(u, middle)))
            {
                continue;
            }

            var points = new List<LineObservation>();
            for (var place = 0.0; place <= length; place += PlaceDistance)
            {
                var at = new PixelPoint(segment.Start.X + (place * ux), segment.Start.Y + (place * uy));
                if (picture.Holds(at.X, at.Y, EdgeReach + 1)
                    && EdgeProfile.Across(picture, at, -uy, ux, EdgeReach, 1).Steepest() is { } edge
                    && Math.Abs(edge.Slope) > SmallestSlope)
                {
                    points.Add(new LineObservation(line, new PixelPoint(at.X - (edge.Place * uy), at.Y + (edge.Place * ux))));
                }
            }

            if (points.Count >= FewestEdgePoints)
            {
                found.AddRange(points);
                used.Add(segment);
                line++;
            }
        }

        return found;
    }

    /// <summary>Says whether a point lies on the line of a segment: pieces of one edge, longest first, count once.</summary>
    private static bool OnLine(PixelSegment segment, PixelPoint at)
    {
        var length = segment.Length.Pixels;
        var (ux, uy) = ((segment.End.X - segment.Start.X) / length, (segment.End.Y - segment.Start.Y) / length);
        return Math.Abs(((at.X - segment.Start.X) * uy) - ((at.Y - segment.Start.Y) * ux)) < SameEdge;
    }

    private static ImmutableArray<PixelPoint> Outline(TickRun run, List<LineObservation> lines)
    {
        // Numbers and margins are taken to reach five ticks beyond the first and last one.
        const double Margin = 5;
        var (from, to) = (run.Places[0].Along - (Margin * run.Period), run.Places[^1].Along + (Margin * run.Period));
        var (least, most) = (-Margin * run.Period, Margin * run.Period);
        foreach (var line in lines)
        {
            var beside = ((line.At.Y - run.Origin.Y) * run.DirectionX) - ((line.At.X - run.Origin.X) * run.DirectionY);
            (least, most) = (Math.Min(least, beside), Math.Max(most, beside));
        }

        return [run.At(from, least), run.At(to, least), run.At(to, most), run.At(from, most)];
    }
}
