using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Strips;

public sealed class CylinderStripMapTests
{
    private static readonly Gen<CylinderStripMap> Maps =
        from radius in Gen.Double[8, 40]
        from tilt in Gen.Double[-0.5, 0.5]
        from roll in Gen.Double[-3.1, 3.1]
        from scale in Gen.Double[100, 900]
        select new CylinderStripMap(
            CylinderPoseTests.PoseOf(new TubeScene { Radius = radius, Tilt = tilt, Roll = roll }), scale, -2, Angle.FromDegrees(-70));

    [Fact]
    public void A_photo_point_comes_back_from_the_strip_within_a_millionth_of_a_pixel() =>
        Gen.Select(Maps, Gen.Double[-1.8, 1.8], Gen.Double[-1.2, 1.2]).Sample((map, axial, around) =>
        {
            var photo = map.ToPhoto(map.FromSurface(new SurfacePoint(axial, Angle.FromRadians(around))));
            var strip = map.ToStrip(photo);
            Assert.NotNull(strip);
            Assert.True(map.ToPhoto(strip.Value).DistanceTo(photo).Pixels < 1e-6);
            Assert.True(map.FromSurface(new SurfacePoint(axial, Angle.FromRadians(around))).DistanceTo(strip.Value).Pixels < 1e-6);
        });

    [Fact]
    public void A_run_of_points_is_the_same_as_point_after_point() =>
        Gen.Select(Maps, Gen.Double[0, 300], Gen.Double[0, 300], Gen.Double[-1, 1], Gen.Bool).Sample((map, x, y, step, along) =>
        {
            var run = new PixelPoint[50];
            map.FillRun(new PixelPoint(x, y), along ? step : 0, along ? 0 : step, run);
            for (var i = 0; i < run.Length; i++)
            {
                var alone = map.ToPhoto(new PixelPoint(x + (along ? i * step : 0), y + (along ? 0 : i * step)));
                Assert.True(alone.DistanceTo(run[i]).Pixels < 1e-6);
            }
        });

    [Fact]
    public void The_stretch_is_one_facing_the_camera_and_two_near_sixty_degrees()
    {
        // 1 / cos 60 degrees = 2 for a camera far away; a nearer camera sees a little less of the flank.
        var map = new CylinderStripMap(CylinderPoseTests.PoseOf(new TubeScene { Radius = 1, Distance = 4000, Focal = 300000 }), 100, 0, default);
        Assert.Equal(1, map.Stretch(new PixelPoint(0, 0)), 1e-9);
        Assert.Equal(2, map.Stretch(new PixelPoint(0, 100 * Math.PI / 3)), 0.01);
    }

    [Fact]
    public void A_photo_point_beside_the_tube_has_no_place_in_the_strip() =>
        Assert.Null(new CylinderStripMap(CylinderPoseTests.PoseOf(new TubeScene()), 100, 0, default).ToStrip(new PixelPoint(600, 20)));

    [Fact]
    public void The_strip_looks_like_the_photo_and_is_not_mirrored() =>
        Maps.Sample(map =>
        {
            // The turn from the strip's X to its Y keeps its sense in the photo.
            var at = map.FromSurface(default);
            var here = map.ToPhoto(at);
            var right = map.ToPhoto(at with { X = at.X + 1 });
            var down = map.ToPhoto(at with { Y = at.Y + 1 });
            Assert.True(((right.X - here.X) * (down.Y - here.Y)) - ((right.Y - here.Y) * (down.X - here.X)) > 0);
        });
}
