using System;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>The focal length guessed where a file does not tell it, on tubes drawn from the usual lenses and distances that the guess names, and their truth.</summary>
public sealed class FocalGuessTests(ITestOutputHelper output)
{
    private const int Scenes = 600;
    private static readonly FocalGuess Guess = new();

    [Fact]
    public void Over_usual_lenses_and_distances_places_round_the_tube_are_nearer_than_with_one_focal_length_for_all()
    {
        var guessed = Drawn().Select(scene => ArcError.Of(scene, PoseOf(scene, GuessFor(scene)))).ToList();
        var constant = Drawn().Select(scene => ArcError.Of(scene, PoseOf(scene, PixelLength.FromPixels(Guess.Usual * scene.Width)))).ToList();
        output.WriteLine(FormattableString.Invariant($"root mean square of the arc error: guessed {RootMeanSquare(guessed):0.00 %}, one for all {RootMeanSquare(constant):0.00 %} (of {Scenes})"));
        Assert.True(RootMeanSquare(guessed) < 0.9 * RootMeanSquare(constant));
    }

    [Fact]
    public void The_doubt_stated_holds_the_truth_about_as_often_as_one_standard_deviation_does()
    {
        var held = Drawn().Count(scene =>
        {
            var (first, second) = Outlines(scene);
            var pose = PoseOf(scene, GuessFor(scene));
            var doubt = Guess.Doubt(first, second, pose);
            Assert.NotNull(doubt);
            var seen = new CylinderProjection(pose).ToSurface(scene.Project(scene.SurfaceAt(0, scene.Facing() + (Math.PI / 4))));
            Assert.NotNull(seen);
            return Math.Abs(Math.Abs(seen.Value.Around.Degrees) - 45) <= doubt.Value.Degrees;
        });
        output.WriteLine($"{held} of {Scenes}");

        // 68.3 % of a normal density lie within one standard deviation; the doubt is that of the longer way, so that a little more is held.
        Assert.InRange(held / (double)Scenes, 0.63, 0.85);
    }

    [Fact]
    public void A_picture_twice_as_large_has_twice_the_focal_length()
    {
        foreach (var scene in Drawn().Take(20))
        {
            var twice = scene with { Width = 2 * scene.Width, Height = 2 * scene.Height, Focal = 2 * scene.Focal };
            Assert.Equal(2 * GuessFor(scene).Pixels, GuessFor(twice).Pixels, 1e-3 * scene.Focal);
        }
    }

    [Fact]
    public void A_wider_tube_in_the_picture_speaks_for_a_longer_lens()
    {
        var scene = Drawn().First() with { Tilt = 0 };
        Assert.True(GuessFor(scene with { Radius = 20 }).Pixels > 1.2 * GuessFor(scene with { Radius = 10 }).Pixels);
    }

    private static System.Collections.Generic.IEnumerable<TubeScene> Drawn()
    {
        var random = new Random(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        for (var i = 0; i < Scenes; i++)
        {
            var focal = Guess.Usual * Math.Exp(Guess.Spread * Normal());
            var distance = Guess.UsualDistance * Math.Exp(Guess.DistanceSpread * Normal());
            yield return new TubeScene { Width = 1600, Height = 1200, Focal = focal * 1600, Radius = 16, Distance = 16 * Math.Max(distance, 2), Tilt = (random.NextDouble() - 0.5) * 0.6, Roll = random.NextDouble() * 3 };
        }
    }

    private static (PixelSegment First, PixelSegment Second) Outlines(TubeScene scene) => (scene.Silhouette(false, -10, 10), scene.Silhouette(true, -10, 10));

    private static PixelLength GuessFor(TubeScene scene)
    {
        var (first, second) = Outlines(scene);
        var guess = Guess.Of(first, second, scene.PrincipalPoint, scene.Width);
        Assert.NotNull(guess);
        return guess.Value;
    }

    private static CylinderPose PoseOf(TubeScene scene, PixelLength focal)
    {
        var (first, second) = Outlines(scene);
        var pose = CylinderPose.FromSilhouettes(first, second, focal, focalAssumed: true, scene.PrincipalPoint);
        Assert.NotNull(pose);
        return pose;
    }

    private static double RootMeanSquare(System.Collections.Generic.IEnumerable<double> errors) => Math.Sqrt(errors.Average(error => error * error));
}
