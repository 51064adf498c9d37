using System;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>Slightly tapered tubes: cones that lie square to the camera, worked out in the world's frame.</summary>
public sealed class TaperTests(ITestOutputHelper output)
{
    private static readonly TubeScene Square = new() { Width = 1200, Height = 900, Focal = 1900, Radius = 16, Distance = 220 };

    [Theory]
    [InlineData(2.5)]
    [InlineData(4)]
    public void A_strong_taper_is_said_with_its_angle(double degrees)
    {
        using var finder = new TubeFinder();
        var found = Assert.IsType<Outcome<Tube>.Found>(finder.Run(TubeRenderer.Render(Square with { Width = 120, Height = 90, Focal = 190 }), Outline(degrees, -1, 0.1), Outline(degrees, 1, 0.1)));
        var note = Assert.Single(found.Value.Notes, note => note.Contains("tapered", StringComparison.Ordinal));
        Assert.Contains(FormattableString.Invariant($"by {2 * Seen(degrees):0.0} degrees"), note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void A_tube_without_taper_is_not_doubted(double degrees)
    {
        using var finder = new TubeFinder();
        var found = Assert.IsType<Outcome<Tube>.Found>(finder.Run(TubeRenderer.Render(Square with { Width = 120, Height = 90, Focal = 190 }), Outline(degrees, -1, 0.1), Outline(degrees, 1, 0.1)));
        Assert.DoesNotContain(found.Value.Notes, note => note.Contains("tapered", StringComparison.Ordinal));
    }

    /// <summary>What a taper costs round the tube where it is laid flat as a cylinder: places over 45 degrees to either side, as a share of that arc.</summary>
    [Theory]
    [InlineData(0.5, 0.003)]
    [InlineData(1, 0.006)]
    [InlineData(2, 0.02)]
    public void A_slight_taper_hardly_moves_letters_round_the_tube(double degrees, double allowed)
    {
        var pose = CylinderPose.FromSilhouettes(Outline(degrees, -1, 1), Outline(degrees, 1, 1), PixelLength.FromPixels(Square.Focal), focalAssumed: false, Square.PrincipalPoint);
        Assert.NotNull(pose);
        var projection = new CylinderProjection(pose);
        var errors = Enumerable.Range(-9, 19).Select(i => i * 5 * Math.PI / 180).Select(around =>
            Math.Abs(projection.ToSurface(Square.Project(new Vector3D(0, -Square.Radius * Math.Sin(around), Square.Radius * Math.Cos(around))))!.Value.Around.Radians) - Math.Abs(around)).ToList();
        var error = Math.Sqrt(errors.Average(error => error * error)) / (Math.PI / 2);
        output.WriteLine(FormattableString.Invariant($"{degrees} degrees: {error:0.00 %} of the arc"));
        Assert.True(error < allowed, $"{error:0.0000}");
    }

    /// <summary>One outline of the cone: its tangent planes through the camera touch it along a straight line at a fixed angle.</summary>
    private static PixelSegment Outline(double degrees, int side, double scale)
    {
        var camera = Square.Camera().Centre;
        var taper = Math.Tan(degrees * Math.PI / 180);
        PixelPoint At(double axial)
        {
            // The plane touches where the outward normal (taper, -sin, cos) is square to the ray from the camera.
            var radius = Square.Radius - (taper * axial);
            var cosine = (radius - (taper * (camera.X - axial))) / camera.Z;
            var around = side * Math.Acos(cosine);
            var point = Square.Project(new Vector3D(axial, -radius * Math.Sin(around), radius * Math.Cos(around)));
            return new PixelPoint(((point.X + 0.5) * scale) - 0.5, ((point.Y + 0.5) * scale) - 0.5);
        }

        return new PixelSegment(At(-30), At(30));
    }

    /// <summary>The slope of one outline in the picture.</summary>
    private static double Seen(double degrees)
    {
        var line = Outline(degrees, 1, 1);
        return Math.Abs(Math.Atan2(line.End.Y - line.Start.Y, line.End.X - line.Start.X)) * 180 / Math.PI;
    }
}
