using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds a card of the size ID-1 (ISO/IEC 7810: 85.60 mm by 53.98 mm): four straight edges with its proportions, then each edge measured between the rounded corners.</summary>
internal sealed class Id1Reference : IScaleReference
{
    /// <summary>Length and width in millimetres (ISO/IEC 7810, ID-1).</summary>
    private const double CardLength = 85.60;
    private const double CardWidth = 53.98;

    /// <summary>Shortest piece of edge looked at, as a share of the picture's longer side, and lines kept at most, longest first.</summary>
    private const double SmallestEdgeShare = 0.04;
    private const int MostLines = 36;

    /// <summary>Pieces count as one line up to this turn in radians and this distance in pixels of a picture 1600 wide.</summary>
    private const double EqualTurn = 0.02;
    private const double EqualDistance = 4;

    /// <summary>Opposite edges may converge by this, neighbouring ones must differ by that, in radians: a card seen under 30 degrees.</summary>
    private const double LargestConvergence = 0.2;
    private const double SmallestCorner = 1.0;

    /// <summary>How far the proportion of the sides may lie from the card's, as a factor: one side shrinks by a tenth under 25 degrees, and print on the card has other proportions.</summary>
    private const double ProportionFactor = 1.15;

    /// <summary>Shortest side as a share of the picture's longer side.</summary>
    private const double SmallestSideShare = 0.08;

    /// <summary>Share of a side at each end that is not looked at: the corners are rounded by 3.18 mm.</summary>
    private const double CornerShare = 0.09;

    /// <summary>Least share of each side along which its edge is seen with one polarity.</summary>
    private const double SmallestSupport = 0.6;

    /// <summary>Places looked at along each side when candidates are compared.</summary>
    private const int Places = 24;
    private const double Reach = 4;
    private const double SmallestSlope = 0.01;

    /// <summary>Distance of measured places along a side, in pixels.</summary>
    private const double PlaceDistance = 4;

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Id1;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        var picture = LightPicture.From(image);
        var lines = Lines(StraightEdges.Find(image, SmallestEdgeShare), Math.Max(image.Width, image.Height));
        var (best, most) = ((PixelPoint[]?)null, 0.0);
        foreach (var corners in Quads(lines, picture))
        {
            cancel.ThrowIfCancellationRequested();
            var support = Enumerable.Range(0, 4).Min(i => Support(picture, corners[i], corners[(i + 1) % 4]));

            // Print on a card makes smaller rectangles: the largest whose four sides are seen is the card.
            var worth = support < SmallestSupport ? 0 : Area(corners);
            if (worth > most)
            {
                (best, most) = (corners, worth);
            }
        }

        return best is null ? null : Sighting(picture, best);
    }

    private static ScaleSighting? Sighting(LightPicture picture, PixelPoint[] corners)
    {
        PixelPoint[] plane = [new(0, 0), new(CardLength, 0), new(CardLength, CardWidth), new(0, CardWidth)];
        if (PlaneHomography.Fit(plane, corners) is not { } map)
        {
            return null;
        }

        var edges = new List<EdgeObservation>();
        foreach (var (acrossX, value, length) in new[] { (false, 0.0, CardLength), (true, CardLength, CardWidth), (false, CardWidth, CardLength), (true, 0.0, CardWidth) })
        {
            var (from, to) = acrossX ? (map.ToPicture(value, 0), map.ToPicture(value, length)) : (map.ToPicture(0, value), map.ToPicture(length, value));
            var count = (int)(from.DistanceTo(to).Pixels / PlaceDistance);
            var polarity = Polarity(picture, map, acrossX, value, length);
            for (var i = 0; i <= count; i++)
            {
                var share = (double)i / count;
                if (share >= CornerShare && share <= 1 - CornerShare
                    && EdgePoint.Find(picture, map, acrossX, value, share * length, CardWidth, Reach, polarity, SmallestSlope) is { } at)
                {
                    // All four edges are seen with one polarity, so how far blur moves them cannot be told from these readings: it has a row of its own.
                    edges.Add(new EdgeObservation(0, acrossX, value, 0, at));
                }
            }
        }

        return new ScaleSighting(
            ScaleKind.Id1,
            Length.FromMillimetres(CardLength),
            false,
            [.. plane.Zip(corners, (p, c) => new CornerObservation(0, p.X, p.Y, c))],
            [.. edges],
            [],
            [map.ToPicture(-2, -2), map.ToPicture(CardLength + 2, -2), map.ToPicture(CardLength + 2, CardWidth + 2), map.ToPicture(-2, CardWidth + 2)]);
    }

    /// <summary>Says whether light grows (+1) or falls (-1) with the known coordinate along most of a side.</summary>
    private static int Polarity(LightPicture picture, PlaneHomography map, bool acrossX, double value, double length)
    {
        var (up, down) = (0, 0);
        for (var i = 0; i < Places; i++)
        {
            var other = length * (CornerShare + ((1 - (2 * CornerShare)) * (i + 0.5) / Places));
            up += EdgePoint.Find(picture, map, acrossX, value, other, CardWidth, Reach, 1, SmallestSlope) is null ? 0 : 1;
            down += EdgePoint.Find(picture, map, acrossX, value, other, CardWidth, Reach, -1, SmallestSlope) is null ? 0 : 1;
        }

        return up >= down ? 1 : -1;
    }

    /// <summary>Gives the share of a side along which an edge of its commoner polarity is seen.</summary>
    private static double Support(LightPicture picture, PixelPoint from, PixelPoint to)
    {
        var length = from.DistanceTo(to).Pixels;
        var (ux, uy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var (up, down) = (0, 0);
        for (var i = 0; i < Places; i++)
        {
            var along = length * (CornerShare + ((1 - (2 * CornerShare)) * (i + 0.5) / Places));
            var at = new PixelPoint(from.X + (along * ux), from.Y + (along * uy));
            if (picture.Holds(at.X, at.Y, Reach + EdgeProfile.Smoothing)
                && EdgeProfile.Across(picture, at, -uy, ux, Reach, 1).Steepest() is { } edge && Math.Abs(edge.Slope) >= SmallestSlope)
            {
                (up, down) = edge.Slope > 0 ? (up + 1, down) : (up, down + 1);
            }
        }

        return Math.Max(up, down) / (double)Places;
    }

    private static IEnumerable<PixelPoint[]> Quads(List<PixelSegment> lines, LightPicture picture)
    {
        var pairs = new List<(PixelSegment One, PixelSegment Other)>();
        for (var i = 0; i < lines.Count; i++)
        {
            for (var j = i + 1; j < lines.Count; j++)
            {
                if (Turn(lines[i], lines[j]) < LargestConvergence)
                {
                    pairs.Add((lines[i], lines[j]));
                }
            }
        }

        var smallest = SmallestSideShare * Math.Max(picture.Width, picture.Height);
        foreach (var (top, bottom) in pairs)
        {
            foreach (var (left, right) in pairs.Where(p => Turn(top, p.One) > SmallestCorner))
            {
                if (Meet(top, left) is { } a && Meet(top, right) is { } b && Meet(bottom, right) is { } c && Meet(bottom, left) is { } d
                    && new[] { a, b, c, d }.All(p => picture.Holds(p.X, p.Y, 1)))
                {
                    var length = (a.DistanceTo(b).Pixels + c.DistanceTo(d).Pixels) / 2;
                    var width = (b.DistanceTo(c).Pixels + d.DistanceTo(a).Pixels) / 2;
                    var off = length / width / (CardLength / CardWidth);
                    if (width >= smallest && off < ProportionFactor && off > 1 / ProportionFactor)
                    {
                        yield return Signed([a, b, c, d]) >= 0 ? [a, b, c, d] : [b, a, d, c];
                    }
                }
            }
        }
    }

    private static double Area(PixelPoint[] p) => Math.Abs(Signed(p));

    private static double Signed(PixelPoint[] p) =>
        Enumerable.Range(0, p.Length).Sum(i => (p[i].X * p[(i + 1) % p.Length].Y) - (p[(i + 1) % p.Length].X * p[i].Y)) / 2;

    private static List<PixelSegment> Lines(List<PixelSegment> segments, int side)
    {
        var distance = EqualDistance * Math.Max(1, side / (double)StraightEdges.SearchSide);
        var lines = new List<PixelSegment>();
        foreach (var segment in segments)
        {
            if (lines.Count < MostLines && !lines.Any(l => Turn(l, segment) < EqualTurn && Beside(l, segment.Start) < distance && Beside(l, segment.End) < distance))
            {
                lines.Add(segment);
            }
        }

        return lines;
    }

    private static (double X, double Y) Direction(PixelSegment s)
    {
        var length = s.Length.Pixels;
        return ((s.End.X - s.Start.X) / length, (s.End.Y - s.Start.Y) / length);
    }

    /// <summary>Gives the angle between two lines, 0 to a quarter turn, in radians.</summary>
    private static double Turn(PixelSegment one, PixelSegment other)
    {
        var ((ux, uy), (vx, vy)) = (Direction(one), Direction(other));
        return Math.Asin(Math.Min(1, Math.Abs((ux * vy) - (uy * vx))));
    }

    private static double Beside(PixelSegment line, PixelPoint at)
    {
        var (ux, uy) = Direction(line);
        return Math.Abs(((at.X - line.Start.X) * uy) - ((at.Y - line.Start.Y) * ux));
    }

    private static PixelPoint? Meet(PixelSegment one, PixelSegment other)
    {
        var ((ux, uy), (vx, vy)) = (Direction(one), Direction(other));
        var cross = (ux * vy) - (uy * vx);
        if (Math.Abs(cross) < 1e-9)
        {
            return null;
        }

        var along = (((other.Start.X - one.Start.X) * vy) - ((other.Start.Y - one.Start.Y) * vx)) / cross;
        return new PixelPoint(one.Start.X + (along * ux), one.Start.Y + (along * uy));
    }
}
