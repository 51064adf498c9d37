using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Rings;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Rings;

public sealed class RingStripMapTests
{
    private static readonly Gen<RingScene> Scenes =
        from tilt in Gen.Double[0, 0.7]
        from turn in Gen.Double[-3.1, 3.1]
        from offX in Gen.Double[-0.3, 0.3]
        from offY in Gen.Double[-0.3, 0.3]
        from inner in Gen.Double[0.4, 0.85]
        select new RingScene { Tilt = tilt, Turn = turn, OffX = offX, OffY = offY, Inner = inner };

    /// <summary>The scene projects plane points by itself; the map has only the two ellipses to go by.</summary>
    [Fact]
    public void Plane_points_are_recovered_from_the_two_ellipses_alone() =>
        Gen.Select(Scenes, Gen.Double[0.4, 1.0], Gen.Double[-3.1, 3.1]).Sample((scene, radius, around) =>
        {
            var plane = new RingPlane(scene.EllipseOf(1), scene.EllipseOf(scene.Inner));
            Assert.Equal(scene.Inner, plane.InnerRadius, 1e-6);
            var start = plane.ToPlane(scene.Project(1, 0));
            var seen = plane.ToPlane(scene.Project(radius, around));
            Assert.NotNull(start);
            Assert.NotNull(seen);
            Assert.Equal(radius, seen.Value.Radius, 1e-5);
            Assert.True(Math.Abs(Math.IEEERemainder(seen.Value.Around.Radians - start.Value.Around.Radians - around, 2 * Math.PI)) < 1e-4);
        });

    [Fact]
    public void A_photo_point_comes_back_from_the_ring_strip_within_a_millionth_of_a_pixel() =>
        Gen.Select(Scenes, Gen.Bool, Gen.Double[1, 1500], Gen.Double[0, 80]).Sample((scene, outward, x, y) =>
        {
            var map = new RingStripMap(new RingPlane(scene.EllipseOf(1), scene.EllipseOf(scene.Inner)), outward, 300, Angle.FromDegrees(30));
            var point = new PixelPoint(Math.Min(x, map.ColumnsPerTurn - 1), y);
            var strip = map.ToStrip(map.ToPhoto(point));
            Assert.NotNull(strip);
            Assert.True(strip.Value.DistanceTo(point).Pixels < 1e-6);
        });

    /// <summary>By hand, a ring of 200 and 120 pixels seen square on: half way, at 160 pixels, a column is as wide as a row is high, one pixel of the photo; a turn has 2 pi 160 = 1005.31 columns.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Half_way_between_the_edges_of_a_ring_both_scales_are_one(bool outward)
    {
        PixelEllipse Circle(double radius) => new(new PixelPoint(300, 250), PixelLength.FromPixels(radius), PixelLength.FromPixels(radius), default);
        var map = new RingStripMap(new RingPlane(Circle(200), Circle(120)), outward, 200, default);
        var here = map.ToPhoto(new PixelPoint(70, 40));

        Assert.Equal(160, here.DistanceTo(new PixelPoint(300, 250)).Pixels, 1e-9);
        Assert.Equal(1, here.DistanceTo(map.ToPhoto(new PixelPoint(71, 40))).Pixels, 1e-4);
        Assert.Equal(1, here.DistanceTo(map.ToPhoto(new PixelPoint(70, 41))).Pixels, 1e-9);
        Assert.Equal(1005.31, map.ColumnsPerTurn, 2);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_strip_is_not_mirrored_and_its_top_is_where_the_tops_of_the_letters_point(bool outward)
    {
        var scene = new RingScene { Tilt = 0.3 };
        var map = new RingStripMap(new RingPlane(scene.EllipseOf(1), scene.EllipseOf(scene.Inner)), outward, 300, default);
        var at = new PixelPoint(200, 30);
        var (here, right, down) = (map.ToPhoto(at), map.ToPhoto(at with { X = 201 }), map.ToPhoto(at with { Y = 31 }));
        Assert.True(((right.X - here.X) * (down.Y - here.Y)) - ((right.Y - here.Y) * (down.X - here.X)) > 0);
        var centre = scene.Project(0, 0);
        Assert.Equal(outward, down.DistanceTo(centre) < here.DistanceTo(centre));
    }

    [Fact]
    public void A_full_turn_and_the_overlap_show_the_same_place_twice()
    {
        var scene = new RingScene { Tilt = 0.4 };
        var strip = new RingUnroller().Run(RingScene.Grey(800, 600), scene.EllipseOf(1), scene.EllipseOf(scene.Inner), topsOutward: true);
        var map = Assert.IsType<RingStripMap>(strip.Map);
        var at = new PixelPoint(10, 20);
        Assert.True(map.ToPhoto(at).DistanceTo(map.ToPhoto(at with { X = at.X + map.ColumnsPerTurn })).Pixels < 1e-6);
        Assert.InRange(strip.Image.Width, map.ColumnsPerTurn * 1.24, map.ColumnsPerTurn * 1.25);
    }

    [Fact]
    public void A_photo_turned_and_enlarged_gives_the_same_ring_turned_and_enlarged() =>
        Gen.Select(Scenes, Gen.Double[0.3, 3], Gen.Double[-3, 3], Gen.Double[0.4, 1.0], Gen.Double[-3.1, 3.1]).Sample((scene, size, turn, radius, around) =>
        {
            var (sin, cos) = Math.SinCos(turn);
            PixelPoint Moved(PixelPoint at) => new(size * ((at.X * cos) - (at.Y * sin)), size * ((at.X * sin) + (at.Y * cos)));
            PixelEllipse MovedEllipse(PixelEllipse ellipse) => new(Moved(ellipse.Centre), ellipse.SemiMajor * size, ellipse.SemiMinor * size, Angle.FromRadians(ellipse.Rotation.Radians + turn));
            var (outer, inner) = (scene.EllipseOf(1), scene.EllipseOf(scene.Inner));
            var here = new RingPlane(outer, inner).ToPhoto(radius, Angle.FromRadians(around));
            var there = new RingPlane(MovedEllipse(outer), MovedEllipse(inner)).ToPhoto(radius, Angle.FromRadians(around));
            Assert.True(there.DistanceTo(Moved(here)).Pixels < 1e-6 * size * outer.SemiMajor.Pixels);
        });

    [Fact]
    public void A_strip_cut_elsewhere_shows_the_same_face_shifted()
    {
        var scene = new RingScene { Tilt = 0.3 };
        var face = new RingFace(scene.EllipseOf(1), scene.EllipseOf(scene.Inner), false, []);
        var photo = new EngravedRing(scene, []) { Width = 80, Height = 60 }.Draw();
        RingStripMap MapOf(double degrees) => Assert.IsType<RingStripMap>(new RingUnroller().Run(photo, face, new RingCut(Angle.FromDegrees(degrees), true, default)).Map);
        var (one, other) = (MapOf(0), MapOf(90));
        Assert.True(one.ToPhoto(new PixelPoint(one.ColumnsPerTurn / 4, 7)).DistanceTo(other.ToPhoto(new PixelPoint(0, 7))).Pixels < 1e-6);
    }
}
