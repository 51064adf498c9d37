using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Grows saddle points into the lattice of a checkerboard of any size: neighbours lie where the last step predicts, and their bright quarters are turned by a right angle.</summary>
internal static class CheckerLattice
{
    /// <summary>Fewest corners along each axis: three give nine corners, enough to see tilt.</summary>
    private const int FewestAlong = 3;

    /// <summary>Fewest corners in all.</summary>
    private const int FewestCorners = 9;

    /// <summary>How far a corner may lie from where the last step predicts it, as a share of the step.</summary>
    private const double Tolerance = 0.25;

    /// <summary>How far the bright direction may lie from a right angle to the neighbour's, in radians.</summary>
    private const double TurnTolerance = 0.45;

    /// <summary>Seeds tried at most.</summary>
    private const int MostSeeds = 60;

    /// <summary>Nearest saddles looked at for a first step.</summary>
    private const int NearestForStep = 12;

    /// <summary>Finds the largest lattice.</summary>
    /// <returns>Its corners, or none where the picture shows no checkerboard.</returns>
    internal static ImmutableArray<LatticeCorner> Find(GrayImage image, CancellationToken cancel)
    {
        var saddles = SaddleFinder.Find(image);
        Dictionary<(int I, int J), int> best = [];
        var used = new HashSet<int>();
        for (var seed = 0; seed < Math.Min(saddles.Count, MostSeeds); seed++)
        {
            cancel.ThrowIfCancellationRequested();
            if (used.Contains(seed) || Grow(saddles, seed) is not { } grown)
            {
                continue;
            }

            used.UnionWith(grown.Values);
            if (grown.Count > best.Count)
            {
                best = grown;
            }
        }

        return Wide(best) ? [.. best.Select(p => new LatticeCorner(p.Key.I, p.Key.J, saddles[p.Value].At))] : [];
    }

    /// <summary>Gives the median distance of neighbouring corners.</summary>
    internal static double Spacing(ImmutableArray<LatticeCorner> corners)
    {
        var places = corners.ToDictionary(c => (c.I, c.J), c => c.At);
        var steps = new List<double>();
        foreach (var ((i, j), at) in places)
        {
            if (places.TryGetValue((i + 1, j), out var right))
            {
                steps.Add(at.DistanceTo(right).Pixels);
            }

            if (places.TryGetValue((i, j + 1), out var below))
            {
                steps.Add(at.DistanceTo(below).Pixels);
            }
        }

        steps.Sort();
        return steps.Count == 0 ? 0 : steps[steps.Count / 2];
    }

    private static bool Wide(Dictionary<(int I, int J), int> lattice) =>
        lattice.Count >= FewestCorners
        && lattice.Keys.Select(k => k.I).Distinct().Count() >= FewestAlong
        && lattice.Keys.Select(k => k.J).Distinct().Count() >= FewestAlong;

    private static Dictionary<(int I, int J), int>? Grow(List<SaddlePoint> saddles, int seed)
    {
        if (FirstSteps(saddles, seed) is not { } steps)
        {
            return null;
        }

        var lattice = new Dictionary<(int I, int J), int> { [(0, 0)] = seed };
        var taken = new HashSet<int> { seed };
        var vectors = new Dictionary<(int I, int J), (PixelPoint U, PixelPoint V)> { [(0, 0)] = steps };
        var queue = new Queue<(int I, int J)>();
        queue.Enqueue((0, 0));
        while (queue.Count > 0)
        {
            var place = queue.Dequeue();
            var from = saddles[lattice[place]];
            var (u, v) = vectors[place];
            foreach (var (di, dj) in new[] { (1, 0), (-1, 0), (0, 1), (0, -1) })
            {
                var next = (I: place.I + di, J: place.J + dj);
                var step = di != 0 ? new PixelPoint(u.X * di, u.Y * di) : new PixelPoint(v.X * dj, v.Y * dj);
                if (lattice.ContainsKey(next) || Nearest(saddles, taken, from, step) is not { } found)
                {
                    continue;
                }

                lattice[next] = found;
                taken.Add(found);
                var made = new PixelPoint(saddles[found].At.X - from.At.X, saddles[found].At.Y - from.At.Y);
                vectors[next] = di != 0 ? (new PixelPoint(made.X * di, made.Y * di), v) : (u, new PixelPoint(made.X * dj, made.Y * dj));
                queue.Enqueue(next);
            }
        }

        return lattice;
    }

    /// <summary>Two steps along the sides of the squares, each to the nearest saddle that lies there with its quarters turned.</summary>
    private static (PixelPoint U, PixelPoint V)? FirstSteps(List<SaddlePoint> saddles, int seed)
    {
        var from = saddles[seed];
        var near = Enumerable.Range(0, saddles.Count)
            .Where(i => i != seed && Turned(from, saddles[i]))
            .OrderBy(i => saddles[i].At.DistanceTo(from.At).Pixels)
            .Take(NearestForStep)
            .Select(i => new PixelPoint(saddles[i].At.X - from.At.X, saddles[i].At.Y - from.At.Y))
            .ToArray();

        // The sides of the squares run between the bright and the dark quarters.
        var first = Along(near, from.Bright + (Math.PI / 4));
        var second = Along(near, from.Bright - (Math.PI / 4));
        return first is { } u && second is { } v ? (u, v) : null;
    }

    private static PixelPoint? Along(PixelPoint[] steps, double direction)
    {
        foreach (var step in steps)
        {
            var angle = Math.Atan2(step.Y, step.X) - direction;
            var folded = Math.Abs(angle - (Math.PI * Math.Round(angle / Math.PI)));
            if (folded < TurnTolerance)
            {
                return step;
            }
        }

        return null;
    }

    private static int? Nearest(List<SaddlePoint> saddles, HashSet<int> taken, SaddlePoint from, PixelPoint step)
    {
        var length = Math.Sqrt((step.X * step.X) + (step.Y * step.Y));
        var target = new PixelPoint(from.At.X + step.X, from.At.Y + step.Y);
        var (best, distance) = (-1, Tolerance * length);
        for (var i = 0; i < saddles.Count; i++)
        {
            var d = saddles[i].At.DistanceTo(target).Pixels;
            if (d < distance && !taken.Contains(i) && Turned(from, saddles[i]))
            {
                (best, distance) = (i, d);
            }
        }

        return best < 0 ? null : best;
    }

    private static bool Turned(SaddlePoint one, SaddlePoint other)
    {
        var turn = one.Bright - other.Bright - (Math.PI / 2);
        return Math.Abs(turn - (Math.PI * Math.Round(turn / Math.PI))) < TurnTolerance;
    }
}
