using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds a rule by its ticks: a row of even dips of light beside a straight edge, followed tick by tick across the rule; the rule's long edges give its direction in space.</summary>
internal sealed class RuleReference : IScaleReference
{
    /// <summary>Shortest straight edge looked along, as a share of the picture's longer side.</summary>
    private const double SmallestEdgeShare = 0.06;

    /// <summary>Straight edges looked along at most, longest first; nearly equal ones count once.</summary>
    private const int MostEdges = 24;
    private const double EqualTurn = 0.01;
    private const double EqualDistance = 6;

    /// <summary>Distance of the lines beside an edge on which ticks are looked for, in pixels of the search picture; a fine rule's shortest ticks are longer.</summary>
    private const double LineDistance = 6;

    /// <summary>How far beside an edge ticks are looked for, as a share of the picture's longer side: ticks may start at the edge or at the rule's other edge.</summary>
    private const double BesideShare = 0.22;

    /// <summary>How far beyond the ends of a piece of edge the ticks may go on, as a share of the picture's longer side.</summary>
    private const double ExtensionShare = 1.0;

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Rule;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        var segments = StraightEdges.Find(image, SmallestEdgeShare);
        var picture = LightPicture.From(image);
        var best = Different(segments).Take(MostEdges).SelectMany(s => Beside(picture, s, cancel)).MaxBy(run => run.Places.Length);
        return best is null ? null : RuleReading.Of(picture, best, segments, size);
    }

    private static IEnumerable<PixelSegment> Different(List<PixelSegment> segments)
    {
        var taken = new List<PixelSegment>();
        foreach (var segment in segments)
        {
            if (!taken.Any(t => Equal(t, segment)))
            {
                taken.Add(segment);
                yield return segment;
            }
        }
    }

    private static bool Equal(PixelSegment one, PixelSegment other)
    {
        var (length, otherLength) = (one.Length.Pixels, other.Length.Pixels);
        var (ux, uy) = ((one.End.X - one.Start.X) / length, (one.End.Y - one.Start.Y) / length);
        var (vx, vy) = ((other.End.X - other.Start.X) / otherLength, (other.End.Y - other.Start.Y) / otherLength);
        var distance = Math.Abs(((other.Start.X - one.Start.X) * uy) - ((other.Start.Y - one.Start.Y) * ux));
        return Math.Abs((ux * vy) - (uy * vx)) < EqualTurn && distance < EqualDistance;
    }

    private static IEnumerable<TickRun> Beside(LightPicture picture, PixelSegment segment, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        var side = Math.Max(picture.Width, picture.Height);
        var step = LineDistance * Math.Max(1, side / (double)StraightEdges.SearchSide);
        for (var beside = step / 2; beside < BesideShare * side; beside += step)
        {
            if (Along(picture, segment, beside) is { } right)
            {
                yield return right;
            }

            if (Along(picture, segment, -beside) is { } left)
            {
                yield return left;
            }
        }
    }

    private static TickRun? Along(LightPicture picture, PixelSegment segment, double beside)
    {
        var length = segment.Length.Pixels;
        var (dx, dy) = ((segment.End.X - segment.Start.X) / length, (segment.End.Y - segment.Start.Y) / length);
        var origin = new PixelPoint(segment.Start.X - (beside * dy), segment.Start.Y + (beside * dx));
        var extension = ExtensionShare * Math.Max(picture.Width, picture.Height);
        var (from, to) = (-extension, length + extension);
        if (!picture.Holds(segment.Start.X - (beside * dy) + (length / 2 * dx), segment.Start.Y + (beside * dx) + (length / 2 * dy), 1))
        {
            return null;
        }

        while (from < 0 && !picture.Holds(origin.X + (from * dx), origin.Y + (from * dy), 1))
        {
            from += 1;
        }

        while (to > length && !picture.Holds(origin.X + (to * dx), origin.Y + (to * dy), 1))
        {
            to -= 1;
        }

        return TickRunFinder.Find(picture, origin, dx, dy, from, to);
    }
}
