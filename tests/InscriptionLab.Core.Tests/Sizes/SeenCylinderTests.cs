using System;
using CsCheck;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Sizes;
using Xunit;

namespace InscriptionLab.Core.Tests.Sizes;

/// <summary>Cylinders of known size, their outlines and surface points worked out in space and pictured by a known camera.</summary>
public sealed class SeenCylinderTests
{
    private static readonly Gen<Scene> Scenes = Gen.Select(Gen.Double[5, 40], Gen.Double[-0.6, 0.6], Gen.Double[-60, 60], Gen.Double[-0.15, 0.15], Gen.Double[-0.15, 0.15])
        .Select((radius, turn, offset, tiltX, tiltY) => new Scene(radius, turn, offset, tiltX, tiltY));

    [Fact]
    public void A_tube_on_the_plane_of_the_scale_has_its_radius() => Scenes.Sample(scene =>
    {
        var found = scene.Found(axisAbove: null)!;
        Assert.Equal(scene.Radius, found.Radius, 1e-6);
        Assert.Equal(1, Math.Abs(found.Direction.Dot(scene.Direction)), 1e-9);
    });

    /// <summary>The outlines alone do not tell a small tube near the lens from a large one far off: the height given decides.</summary>
    [Fact]
    public void A_given_height_of_the_axis_gives_the_same_tube_and_a_larger_one_a_smaller_tube() => Scenes.Sample(scene =>
    {
        Assert.Equal(scene.Radius, scene.Found(scene.Radius)!.Radius, 1e-6);
        var eye = -scene.Camera.Centre.Z;
        Assert.Equal(scene.Radius * (eye - scene.Radius - 10) / (eye - scene.Radius), scene.Found(scene.Radius + 10)!.Radius, 1e-6);
    });

    [Fact]
    public void A_picture_of_a_surface_point_leads_back_to_it() => Gen.Select(Scenes, Gen.Double[-40, 40], Gen.Double[-1.1, 1.1]).Sample((scene, along, round) =>
    {
        var found = scene.Found(axisAbove: null)!;
        var (back, origin) = (found.ToSurface(scene.Picture(along, round))!.Value, found.ToSurface(scene.Picture(0, 0))!.Value);
        var sign = Math.Sign(found.Direction.Dot(scene.Direction));
        Assert.Equal(along, sign * (back.Along - origin.Along), 1e-5);
        Assert.Equal(scene.Radius * round, sign * back.Round, 1e-5);
        Assert.Equal(0, origin.Round, 1e-6);
    });

    [Fact]
    public void A_place_on_an_outline_is_where_the_ray_touches() => Gen.Select(Scenes, Gen.Double[-40, 40]).Sample((scene, along) =>
    {
        var found = scene.Found(axisAbove: null)!;
        var sign = Math.Sign(found.Direction.Dot(scene.Direction));
        var from = found.ToSurface(scene.Picture(0, 0))!.Value.Along;
        Assert.Equal(along, sign * (found.AlongOfOutline(scene.Picture(along, scene.Limb)) - from), 1e-5);
        Assert.Equal(along, sign * (found.AlongOfOutline(scene.Picture(along, -scene.Limb)) - from), 1e-5);
    });

    [Fact]
    public void A_point_beside_the_tube_shows_no_place_of_it()
    {
        var scene = new Scene(20, 0, 0, 0, 0);
        Assert.Null(scene.Found(axisAbove: null)!.ToSurface(scene.Camera.Project(new Vector3D(0, 80, 0))));
    }

    [Fact]
    public void One_outline_twice_and_one_that_rises_from_the_plane_bound_no_tube()
    {
        var camera = new Scene(20, 0, 0, 0, 0).Camera;
        var flat = new PixelSegment(new PixelPoint(500, 900), new PixelPoint(1500, 900));
        Assert.Null(SeenCylinder.Of(camera, flat, flat, null));

        // Two outlines that meet in the picture bound a tube that runs away from the camera.
        Assert.Null(SeenCylinder.Of(camera, new PixelSegment(new PixelPoint(0, 0), new PixelPoint(900, 700)), new PixelSegment(new PixelPoint(0, 1500), new PixelPoint(900, 800)), null));
    }

    /// <summary>A tube of a radius that lies on the plane, turned in it and aside from the middle, before a camera 400 mm away that looks askance.</summary>
    private sealed class Scene
    {
        private readonly Vector3D _point;
        private readonly Vector3D _up;

        internal Scene(double radius, double turn, double offset, double tiltX, double tiltY)
        {
            Radius = radius;
            Camera = new PlaneCamera(2400, new PixelPoint(999.5, 749.5), new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), new(0, 0, 400)).Turned(new Vector3D(tiltX, tiltY, 0));
            Direction = new Vector3D(Math.Cos(turn), Math.Sin(turn), 0);
            _point = new Vector3D(-Math.Sin(turn) * offset, Math.Cos(turn) * offset, -radius);
            var toEye = Camera.Centre - _point;
            toEye -= Direction * toEye.Dot(Direction);
            _up = toEye.Normalised();
            Limb = Math.Acos(radius / toEye.Norm);
        }

        internal double Radius { get; }

        internal PlaneCamera Camera { get; }

        internal Vector3D Direction { get; }

        /// <summary>Gets the angle round the axis, from the line that faces the camera, at which the surface turns away.</summary>
        internal double Limb { get; }

        internal PixelPoint Picture(double along, double round) =>
            Camera.Project(_point + (Direction * along) + (((_up * Math.Cos(round)) + (Direction.Cross(_up) * Math.Sin(round))) * Radius));

        internal SeenCylinder? Found(double? axisAbove) => SeenCylinder.Of(
            Camera,
            new PixelSegment(Picture(-30, Limb), Picture(50, Limb)),
            new PixelSegment(Picture(-50, -Limb), Picture(30, -Limb)),
            axisAbove);
    }
}
