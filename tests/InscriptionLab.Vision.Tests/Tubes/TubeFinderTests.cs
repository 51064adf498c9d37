using System;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>Tubes found in rendered scenes whose silhouettes are known exactly.</summary>
public sealed class TubeFinderTests
{
    private static readonly TubeScene Level = new() { Width = 660, Height = 440, Focal = 1020, Radius = 16, Distance = 220, Paint = Paints.Scratched(900, 900, 3) };

    public static TheoryData<double, double, double> Poses => new() { { 0.25, 0.6, 12 }, { -0.2, -1.1, 20 } };

    [Theory]
    [MemberData(nameof(Poses))]
    public void Diameter_and_axis_are_those_of_the_scene_by_edges_alone(double tilt, double roll, double radius)
    {
        using var finder = new TubeFinder();
        IsFound(finder, Level with { Tilt = tilt, Roll = roll, Radius = radius });
    }

    [Theory]
    [MemberData(nameof(Poses))]
    public void Diameter_and_axis_are_those_of_the_scene_with_the_network(double tilt, double roll, double radius)
    {
        using var finder = new TubeFinder(null, ModelsOfProject.Shelf());
        IsFound(finder, Level with { Tilt = tilt, Roll = roll, Radius = radius });
    }

    [Fact]
    public void Cloth_alone_is_no_tube_and_the_reason_is_said()
    {
        using var finder = new TubeFinder(null, ModelsOfProject.Shelf());
        var outcome = finder.Find(TubeRenderer.Render(Level with { Start = 2000, End = 3000 }), CancellationToken.None);
        var declined = Assert.IsType<Outcome<System.Collections.Immutable.ImmutableArray<Tube>>.Declined>(outcome);
        Assert.Contains("No tube can be made out", declined.Refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Marked_sides_need_no_search()
    {
        using var finder = new TubeFinder();
        var scene = Level with { Tilt = 0.2 };
        var found = Assert.IsType<Outcome<Tube>.Found>(finder.Run(TubeRenderer.Render(scene), scene.Silhouette(false, -30, 30), scene.Silhouette(true, -30, 30)));
        Assert.Equal(DiameterOf(scene, found.Value), found.Value.Diameter.Pixels, 0.01);
        Assert.Contains(found.Value.Notes, note => note.Contains("by hand", StringComparison.Ordinal));
    }

    private static void IsFound(TubeFinder finder, TubeScene scene)
    {
        var tubes = finder.RunAll(TubeRenderer.Render(scene), CancellationToken.None);
        Assert.NotEmpty(tubes);
        var tube = tubes[0];
        var expected = DiameterOf(scene, tube);
        Assert.InRange(tube.Diameter.Pixels, 0.995 * expected, 1.005 * expected);
        var truth = DirectionOf(scene.Axis(-20, 20));
        Assert.True(Math.Abs(Math.IEEERemainder(DirectionOf(tube.Axis) - truth, Math.PI)) < 0.3 * Math.PI / 180);
        Assert.InRange(ArcError.Of(scene, tube.Pose), 0, 0.003);
    }

    /// <summary>The true distance between the silhouettes at the place where the tube found gives its own.</summary>
    private static double DiameterOf(TubeScene scene, Tube found)
    {
        var truth = UnrolledTube(scene);
        var middle = new PixelPoint((found.Axis.Start.X + found.Axis.End.X) / 2, (found.Axis.Start.Y + found.Axis.End.Y) / 2);
        return truth.DiameterAt(middle).Pixels;
    }

    private static Tube UnrolledTube(TubeScene scene) => Strips.UnrollerTests.TubeOf(scene);

    private static double DirectionOf(PixelSegment segment) => Math.Atan2(segment.End.Y - segment.Start.Y, segment.End.X - segment.Start.X);
}
