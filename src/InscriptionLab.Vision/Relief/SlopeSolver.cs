using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Measures;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Relief;

/// <summary>From flattened strips and lamps to slopes against the cylinder.</summary>
internal sealed class SlopeSolver(ReliefOptions options)
{
    /// <summary>Steepest slope that is kept: 75 degrees, steeper than any graver cuts.</summary>
    private const double Steepest = 3.7;

    /// <summary>How far from the lettering it is looked whether the lamps explain the photos.</summary>
    private const double Near = 15 * Math.PI / 180;

    /// <summary>Full normals by photometric stereo; bare metal has the cylinder's normal by making.</summary>
    internal SurfaceSlopes Normals(IReadOnlyList<FlatLight> photos, CylinderStripMap map, IReadOnlyList<Lamp> lamps, CancellationToken cancel)
    {
        var slopes = Empty(photos[0]);
        Rows(photos[0], map, (row, around) =>
        {
            var local = lamps.Select(lamp => lamp.At(around)).ToArray();
            Span<double> levels = stackalloc double[photos.Count];
            for (var at = row * photos[0].Width; at < (row + 1) * photos[0].Width; at++)
            {
                for (var i = 0; i < levels.Length; i++)
                {
                    levels[i] = photos[i].Over[at] < 0 || local[i].Z < options.LeastLit ? -1 : photos[i].Over[at] * local[i].Z;
                }

                if (PhotometricStereo.Solve(levels, local) is { Normal.Z: > 0 } pixel)
                {
                    slopes.AlongAxis[at] = (float)Math.Clamp(-pixel.Normal.X / pixel.Normal.Z, -Steepest, Steepest);
                    slopes.AlongArc[at] = (float)Math.Clamp(-pixel.Normal.Y / pixel.Normal.Z, -Steepest, Steepest);
                    slopes.Albedo[at] = (float)pixel.Albedo;
                }
            }
        }, cancel);
        return slopes;
    }

    /// <summary>Slopes in one direction, by least squares: level over ground is albedo times one minus slope times tangent of the lamp.</summary>
    internal SurfaceSlopes OneDirection(IReadOnlyList<FlatLight> photos, CylinderStripMap map, IReadOnlyList<Lamp> lamps, LampSpread spread, CancellationToken cancel)
    {
        var slopes = Empty(photos[0]);
        Rows(photos[0], map, (row, around) =>
        {
            var local = lamps.Select(lamp => lamp.At(around)).ToArray();
            var tangents = local.Select(at => ((at.X * spread.X) + (at.Y * spread.Y)) / Math.Max(at.Z, options.LeastLit)).ToArray();
            for (var at = row * photos[0].Width; at < (row + 1) * photos[0].Width; at++)
            {
                var (n, t, tt, r, rt) = (0, 0.0, 0.0, 0.0, 0.0);
                for (var i = 0; i < tangents.Length; i++)
                {
                    var level = photos[i].Over[at];
                    if (level >= 0 && local[i].Z >= options.LeastLit)
                    {
                        (n, t, tt, r, rt) = (n + 1, t + tangents[i], tt + (tangents[i] * tangents[i]), r + level, rt + (level * tangents[i]));
                    }
                }

                var determinant = (n * tt) - (t * t);
                if (n < 2 || determinant < options.LeastDifference * options.LeastDifference)
                {
                    continue;
                }

                var (albedo, rise) = (((tt * r) - (t * rt)) / determinant, ((n * rt) - (t * r)) / determinant);
                var slope = albedo > 1e-3 ? Math.Clamp(-rise / albedo, -Steepest, Steepest) : 0;
                (slopes.AlongAxis[at], slopes.AlongArc[at], slopes.Albedo[at]) = ((float)(slope * spread.X), (float)(slope * spread.Y), (float)albedo);
            }
        }, cancel);
        return slopes;
    }

    /// <summary>Gives the share of what changes from photo to photo, near the lettering, that slopes in one direction and albedo explain; burnt-out pixels say nothing.</summary>
    internal double Explained(IReadOnlyList<FlatLight> photos, CylinderStripMap map, IReadOnlyList<Lamp> lamps, LampSpread spread, SurfaceSlopes slopes, Angle focus)
    {
        var (rest, all) = (0.0, 0.0);
        for (var row = 0; row < photos[0].Height; row++)
        {
            var around = map.ToSurface(new PixelPoint(0, row)).Around;
            var local = lamps.Select(lamp => lamp.At(around)).ToArray();
            if (Math.Abs(around.Radians - focus.Radians) > Near || local.Any(at => at.Z < options.LeastLit))
            {
                continue;
            }

            var tangents = local.Select(at => ((at.X * spread.X) + (at.Y * spread.Y)) / at.Z).ToArray();
            for (var at = row * photos[0].Width; at < (row + 1) * photos[0].Width; at++)
            {
                var (n, sum) = (0, 0.0);
                foreach (var photo in photos)
                {
                    (n, sum) = photo.Over[at] >= 0 ? (n + 1, sum + photo.Over[at]) : (n, sum);
                }

                if (n < 2)
                {
                    // Nothing changes between fewer than two photos.
                    continue;
                }

                var slope = (slopes.AlongAxis[at] * spread.X) + (slopes.AlongArc[at] * spread.Y);
                for (var i = 0; i < photos.Count; i++)
                {
                    var level = photos[i].Over[at];
                    if (level >= 0)
                    {
                        var (off, change) = (level - (slopes.Albedo[at] * (1 - (slope * tangents[i]))), level - (sum / n));
                        (rest, all) = (rest + (off * off), all + (change * change));
                    }
                }
            }
        }

        return all > 0 ? 1 - (rest / all) : 0;
    }

    private static SurfaceSlopes Empty(FlatLight size)
    {
        var albedo = new float[size.Over.Length];
        Array.Fill(albedo, 1f);
        return new SurfaceSlopes(new float[albedo.Length], new float[albedo.Length], albedo);
    }

    private static void Rows(FlatLight size, CylinderStripMap map, Action<int, Angle> run, CancellationToken cancel) =>
        Parallel.For(0, size.Height, new ParallelOptions { CancellationToken = cancel }, row => run(row, map.ToSurface(new PixelPoint(0, row)).Around));
}
