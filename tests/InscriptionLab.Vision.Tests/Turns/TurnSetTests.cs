using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using InscriptionLab.Vision.Turns;
using Xunit;

namespace InscriptionLab.Vision.Tests.Turns;

public sealed class TurnSetTests
{
    private const double PaintScale = 6;

    /// <summary>Share of the circumference.</summary>
    private const double LargestSeam = 0.003;

    private static readonly TubeScene Scene = new()
    {
        Width = 600,
        Height = 400,
        Focal = 950,
        Tilt = 0.1,
        Roll = 0.1,
        PaintPixelsPerMillimetre = PaintScale,
    };

    [Fact]
    public void Unknown_turns_of_a_full_circle_are_found_within_half_a_degree()
    {
        double[] turns = [0, 40, 88, 130, 178, 221, 265, 318];
        double[] pushes = [0, 1, -0.5, 0.3, 2, 0, -1, 0.5];
        var mosaic = Assert.IsType<Outcome<TurnMosaic>.Found>(Run(turns, pushes, seed: 3)).Value;
        for (var i = 0; i < turns.Length; i++)
        {
            Assert.Equal(0, Math.IEEERemainder(mosaic.Views[i].Turn.Degrees - turns[i], 360), 0.5);
            Assert.Equal(pushes[i] / Scene.Radius, mosaic.Views[i].AxialShift, 0.02);
        }

        Assert.NotNull(mosaic.Closure);
        Assert.True(Math.Abs(mosaic.Closure.Value.Degrees) < 1.5);
        Assert.Equal(1, mosaic.ShareSeen, 0.01);
    }

    [Fact]
    public void Every_place_of_the_strip_leads_to_the_photo_that_shows_it()
    {
        double[] turns = [0, 45, 90];
        var mosaic = Assert.IsType<Outcome<TurnMosaic>.Found>(Run(turns, [0, 0, 0], seed: 5)).Value;
        Assert.Null(mosaic.Closure);
        Assert.InRange(mosaic.ShareSeen, 0.55, 0.66);
        for (var y = 20; y < mosaic.Image.Height - 20; y += 40)
        {
            var at = mosaic.Locate(new PixelPoint(mosaic.Image.Width / 2.0, y));
            Assert.NotNull(at);

            // The world angle of the place, worked out by the scene, is the same from whichever photo it is seen.
            var scene = Scene with { Turn = turns[at.Value.PhotoIndex] * Math.PI / 180 };
            var surface = new CylinderProjection(UnrollerTests.TubeOf(scene).Pose).ToSurface(at.Value.Point);
            Assert.NotNull(surface);
            var expected = (mosaic.Views[0].Map.FirstAround.Radians * 180 / Math.PI) + (y / mosaic.PixelsPerRadius * 180 / Math.PI);
            Assert.Equal(expected, (surface.Value.Around.Radians * 180 / Math.PI) - turns[at.Value.PhotoIndex], 1.0);
        }
    }

    [Fact]
    public void Photos_may_come_in_any_order_and_shadows_that_stay_do_not_count()
    {
        double[] turns = [0, 135, 45, 270, 90, 225, 315, 180];
        var mosaic = Assert.IsType<Outcome<TurnMosaic>.Found>(Run(turns, new double[8], seed: 11)).Value;
        Assert.Equal(8, mosaic.Views.Length);
        Assert.All(mosaic.Views, view => Assert.Equal(
            0, Math.IEEERemainder(view.Turn.Degrees - mosaic.Views[0].Turn.Degrees - turns[view.PhotoIndex], 360) / 360, LargestSeam));
        Assert.NotNull(mosaic.Closure);

        // What is said of the seams is on the careful side: pieces of photos fit less surely than whole ones.
        Assert.InRange(mosaic.SeamError.Pixels / (2 * Math.PI * mosaic.PixelsPerRadius), 0, 0.01);
    }

    [Fact]
    public void Photos_of_opposite_sides_are_refused_with_their_names()
    {
        var refused = Assert.IsType<Outcome<TurnMosaic>.Declined>(Run([0, 170], [0, 0], seed: 7)).Refusal;
        Assert.Contains("rendered", refused.Sentence, StringComparison.Ordinal);
        Assert.Contains("eighth of a turn", refused.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void More_photos_than_a_strip_can_tell_apart_are_refused_with_their_number()
    {
        var scene = new TubeScene { Width = 60, Height = 40, Focal = 95 };
        var photo = TubeRenderer.Render(scene);
        var refused = Assert.IsType<Outcome<TurnMosaic>.Declined>(new TurnSet().Run(
            [.. Enumerable.Repeat(photo, 256)], [.. Enumerable.Repeat(UnrollerTests.TubeOf(scene), 256)], [], CancellationToken.None)).Refusal;
        Assert.Contains("256 photos", refused.Sentence, StringComparison.Ordinal);
        Assert.Contains("255", refused.Sentence, StringComparison.Ordinal);
    }

    private static Outcome<TurnMosaic> Run(double[] turns, double[] pushes, int seed)
    {
        var paint = Paints.Scratched(700, (int)(2 * Math.PI * Scene.Radius * PaintScale), seed);
        var scenes = turns.Select((turn, i) => Scene with { Paint = paint, Turn = turn * Math.PI / 180, Push = pushes[i], Seed = i + 1 }).ToList();
        var photos = scenes.Select(scene => TubeRenderer.Render(scene)).ToList<Photo>();
        return new TurnSet().Run(photos, [.. scenes.Select(UnrollerTests.TubeOf)], CancellationToken.None);
    }
}
