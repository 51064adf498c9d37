using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>
/// Adjusts one photo as a whole: camera, scale and coaxial circles in planes parallel to the scale's plane, from every point read on scale and
/// circles, by least squares with what is known before as further observations. Tilt, perspective and the depth of the circles are thereby
/// dealt with exactly, and the covariance of the circles follows from the observations.
/// </summary>
public static class SceneAdjustment
{
    /// <summary>Rounds of solving and weighing anew.</summary>
    private const int Rounds = 4;
    private const int IterationsPerRound = 15;

    /// <summary>Relative gain of a step below which a round stands still: the weights change more between rounds.</summary>
    private const double SmallestGain = 1e-6;

    /// <summary>Rounds and steps of a first look at a start, and how many readings it leaves out for each one it takes.</summary>
    private const int FirstRounds = 2;
    private const int FirstIterations = 12;
    private const int Thinning = 4;
    private const int FewestThinned = 32;

    /// <summary>Starts that are followed to the end.</summary>
    private const int FollowedStarts = 3;

    /// <summary>Turns tried as starts where the scale alone does not fix the tilt, in degrees about axes in the picture.</summary>
    private static readonly double[] StartTilts = [0, 16];
    private const int StartDirections = 6;

    /// <summary>Focal lengths tried as starts where the file says none, in units of the assumed one: tilt and focal length are fixed together, and between two far apart the fit has more than one hollow.</summary>
    private static readonly double[] StartFocals = [0.55, 1, 1.8];

    /// <summary>Relative uncertainty from which a focal length counts as unknown.</summary>
    private const double UnknownFocal = 0.2;

    /// <summary>Adjusts the scene.</summary>
    /// <param name="scale">Points on the scale.</param>
    /// <param name="circles">Points on the circles; may be empty; the outer circle first where present.</param>
    /// <param name="start">Camera to start from.</param>
    /// <param name="priors">What is known before.</param>
    /// <param name="severalStarts">True to try several tilts and keep the best.</param>
    public static SceneSolution Solve(ScaleSighting scale, ImmutableArray<CircleSighting> circles, PlaneCamera start, ScenePriors priors, bool severalStarts)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(priors);
        if (!severalStarts)
        {
            return SolveFrom(scale, circles, start, priors, Rounds, IterationsPerRound);
        }

        var thinScale = scale with { Edges = [.. Every(scale.Edges)], Lines = [.. Every(scale.Lines)], Round = [.. Every(scale.Round)] };
        ImmutableArray<CircleSighting> thinCircles = [.. circles.Select(c => c with { Points = [.. Every(c.Points)] })];
        return Starts(scale, start, priors.FocalRelative > UnknownFocal ? StartFocals : [1])
            .Select(camera => SolveFrom(thinScale, thinCircles, camera, priors, FirstRounds, FirstIterations))
            .OrderBy(solution => solution.Cost)
            .Take(FollowedStarts)
            .Select(first => SolveFrom(scale, circles, first.Camera, priors, Rounds, IterationsPerRound))
            .MinBy(solution => solution.Cost)!;
    }

    /// <summary>
    /// Adjusts the scene again from the other tilt that shows the outer circle as the same ellipse: its normal mirrored at the ray to its middle.
    /// A circle alone does not tell one from the other, nor does a scale that is hardly more than a line.
    /// </summary>
    /// <param name="scale">Points on the scale.</param>
    /// <param name="circles">Points on the circles, the outer one first.</param>
    /// <param name="found">The scene as adjusted.</param>
    /// <param name="priors">What is known before.</param>
    public static SceneSolution Mirrored(ScaleSighting scale, ImmutableArray<CircleSighting> circles, SceneSolution found, ScenePriors priors)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(priors);
        var camera = found.Camera;
        var pivot = found.Circles[0].Centre;
        var normal = new Vector3D(camera.Row0.Z, camera.Row1.Z, camera.Row2.Z);
        var ray = Camera(camera, pivot).Normalised();

        // The turn that leads the normal to its mirror image runs in their common plane, by twice the angle between normal and ray.
        var axis = normal.Cross(ray);
        var angle = 2 * Math.Asin(Math.Min(1, axis.Norm));
        var turned = axis.Norm < 1e-9 ? camera : camera.Turned(axis * (angle / axis.Norm));
        var shifted = turned with { Shift = camera.Shift + (Camera(camera, pivot) - Camera(turned with { Shift = camera.Shift }, pivot)) };
        return SolveFrom(scale, circles, shifted, priors, Rounds, IterationsPerRound);
    }

    private static IEnumerable<T> Every<T>(ImmutableArray<T> readings) => readings.Where((_, i) => readings.Length < FewestThinned || i % Thinning == 0);

    private static SceneSolution SolveFrom(ScaleSighting scale, ImmutableArray<CircleSighting> circles, PlaneCamera camera, ScenePriors priors, int rounds, int iterations)
    {
        var model = new SceneModel(scale, circles, camera, priors);
        LeastSquaresResult result;
        for (var round = 0; round < rounds; round++)
        {
            result = LeastSquares.Solve(model.Residuals, model.Layout.ResidualCount, model.Parameters, model.Layout.Steps(), iterations, SmallestGain);
            model.Take(result, round > 0);
        }

        result = LeastSquares.Solve(model.Residuals, model.Layout.ResidualCount, model.Parameters, model.Layout.Steps(), iterations, SmallestGain);
        model.Keep(result);
        return new SceneSolution(model, result);
    }

    private static IEnumerable<PlaneCamera> Starts(ScaleSighting scale, PlaneCamera start, double[] focals)
    {
        var middle = scale.Middle;
        foreach (var focal in focals)
        {
            // Twice the focal length from twice as far shows nearly the same.
            var from = start with { Focal = focal * start.Focal, Shift = start.Shift with { Z = focal * start.Shift.Z } };
            var pivot = from.BackProject(middle, 0);
            foreach (var tilt in StartTilts)
            {
                for (var i = 0; i < (tilt > 0 ? StartDirections : 1); i++)
                {
                    var direction = i * Math.Tau / StartDirections;
                    var radians = tilt * Math.PI / 180;
                    var turned = from.Turned(new Vector3D(Math.Cos(direction) * radians, Math.Sin(direction) * radians, 0));

                    // Keep the scale's middle where it is seen: turn about it, not about the camera.
                    var before = Camera(from, pivot);
                    var after = Camera(turned with { Shift = from.Shift }, pivot);
                    yield return turned with { Shift = from.Shift + (before - after) };
                }
            }
        }
    }

    private static Vector3D Camera(PlaneCamera camera, Vector3D world) =>
        new Vector3D(camera.Row0.Dot(world), camera.Row1.Dot(world), camera.Row2.Dot(world)) + camera.Shift;
}
