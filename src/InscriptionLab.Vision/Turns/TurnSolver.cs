using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Turns;

/// <summary>
/// Gives each photo its turn from fits of pairs: first along the clearest fits that join all photos (a spanning tree, so that one wrong fit does no harm),
/// then by least squares over all fits that agree with it, so that what is left over of a full turn is spread evenly.
/// </summary>
internal static class TurnSolver
{
    /// <summary>Rounds of relaxation; a circle of n photos settles in about n squared.</summary>
    private const int Rounds = 4000;

    private const double Circle = 2 * Math.PI;

    /// <summary>Places the photos that hang together with the one that fits the others best.</summary>
    /// <param name="photos">Number of photos.</param>
    /// <param name="matches">Fits of pairs.</param>
    /// <param name="largestRest">How far a fit may be off the tree's turn, radians, to count.</param>
    /// <returns>Turns and axial shifts, null for photos that hang together with no other; the fits that count; what is left over of the full turn.</returns>
    internal static (ImmutableArray<(double Turn, double Axial)?> Places, ImmutableArray<TurnMatch> Used, Angle? Closure) Solve(int photos, ImmutableArray<TurnMatch> matches, double largestRest)
    {
        var start = Enumerable.Range(0, photos).MaxBy(photo => matches.Where(match => match.First == photo || match.Second == photo).Sum(match => match.Clearness));
        var places = Tree(photos, matches, start);
        var used = matches.Where(match => places[match.First] is { } first && places[match.Second] is { } second
            && Math.Abs(Math.IEEERemainder(second.Turn - first.Turn - match.Turn.Radians, Circle)) <= largestRest).ToImmutableArray();
        var turns = places.Select(place => place?.Turn ?? 0).ToArray();
        var axials = places.Select(place => place?.Axial ?? 0).ToArray();
        var laps = used.Select(match => Circle * Math.Round((turns[match.Second] - turns[match.First] - match.Turn.Radians) / Circle)).ToArray();
        Relax(turns, start, used, match => match.Turn.Radians, laps);
        Relax(axials, start, used, match => match.AxialShift, new double[used.Length]);
        return ([.. places.Select((place, i) => place is null ? ((double, double)?)null : (turns[i], axials[i]))], used, Closure(turns, used));
    }

    private static (double Turn, double Axial)?[] Tree(int photos, ImmutableArray<TurnMatch> matches, int start)
    {
        var places = new (double Turn, double Axial)?[photos];
        places[start] = (0, 0);
        while (matches.Where(match => places[match.First] is null != places[match.Second] is null).MaxBy(match => match.Clearness) is { } next)
        {
            if (places[next.First] is { } first)
            {
                places[next.Second] = (first.Turn + next.Turn.Radians, first.Axial + next.AxialShift);
            }
            else if (places[next.Second] is { } second)
            {
                places[next.First] = (second.Turn - next.Turn.Radians, second.Axial - next.AxialShift);
            }
        }

        return places;
    }

    /// <summary>Gauss-Seidel relaxation of the least squares, each fit weighted by its clearness.</summary>
    private static void Relax(double[] values, int start, ImmutableArray<TurnMatch> used, Func<TurnMatch, double> step, double[] laps)
    {
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < values.Length; i++)
            {
                if (i == start)
                {
                    continue;
                }

                double sum = 0;
                double weight = 0;
                for (var k = 0; k < used.Length; k++)
                {
                    if (used[k].First == i || used[k].Second == i)
                    {
                        var wanted = used[k].First == i ? values[used[k].Second] - step(used[k]) - laps[k] : values[used[k].First] + step(used[k]) + laps[k];
                        sum += wanted * used[k].Clearness;
                        weight += used[k].Clearness;
                    }
                }

                values[i] = weight > 0 ? sum / weight : values[i];
            }
        }
    }

    /// <summary>The circle is closed where each photo fits the next one round the tube, the last one the first; what is left over is the sum of those fits less a full turn.</summary>
    private static Angle? Closure(double[] turns, ImmutableArray<TurnMatch> used)
    {
        var joined = used.SelectMany(match => new[] { match.First, match.Second }).Distinct().OrderBy(photo => turns[photo] - (Circle * Math.Floor(turns[photo] / Circle))).ToList();
        double sum = 0;
        for (var i = 0; i < joined.Count; i++)
        {
            var (here, next) = (joined[i], joined[(i + 1) % joined.Count]);
            if (used.FirstOrDefault(match => (match.First == here && match.Second == next) || (match.First == next && match.Second == here)) is not { } match)
            {
                return null;
            }

            sum += match.First == here ? match.Turn.Radians : -match.Turn.Radians;
        }

        return joined.Count > 2 && Math.Abs(sum - Circle) < Math.PI ? Angle.FromRadians(sum - Circle) : null;
    }
}
