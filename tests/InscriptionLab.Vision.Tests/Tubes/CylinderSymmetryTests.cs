using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>A picture turned or enlarged shows the same tube: what is measured on it turns and grows with it.</summary>
public sealed class CylinderSymmetryTests
{
    private static readonly Gen<TubeScene> Scenes =
        from radius in Gen.Double[8, 40]
        from tilt in Gen.Double[-0.4, 0.4]
        from roll in Gen.Double[-0.5, 0.5]
        from offAxis in Gen.Double[-10, 10]
        select new TubeScene { Radius = radius, Tilt = tilt, Roll = roll, OffAxis = offAxis };

    [Fact]
    public void Turning_the_picture_turns_the_axis_and_leaves_the_surface_points() =>
        Gen.Select(Scenes, Gen.Double[-0.6, 0.6], Gen.Double[-1.5, 1.5], Gen.Double[-1.2, 1.2]).Sample((scene, turn, axial, around) =>
        {
            var pose = CylinderPoseTests.PoseOf(scene);
            var turned = PoseOf(scene, point => Turned(scene.PrincipalPoint, point, turn));
            Assert.True((Turned(pose.AxisPoint, turn) - turned.AxisPoint).Norm < 1e-8 * pose.AxisPoint.Norm);
            var here = new SurfacePoint(axial, Angle.FromRadians(around));
            var expected = Turned(scene.PrincipalPoint, new CylinderProjection(pose).ToPhoto(here), turn);

            // The axis runs to the right in both pictures unless the turn carries it past upright.
            var same = Turned(pose.AxisDirection, turn).Dot(turned.AxisDirection) > 0;
            var there = same ? here : new SurfacePoint(-axial, Angle.FromRadians(-around));
            Assert.True(new CylinderProjection(turned).ToPhoto(there).DistanceTo(expected).Pixels < 1e-5);
        });

    [Fact]
    public void Enlarging_the_picture_enlarges_what_is_projected_and_nothing_else() =>
        Gen.Select(Scenes, Gen.Double[0.3, 4], Gen.Double[-1.5, 1.5], Gen.Double[-1.2, 1.2]).Sample((scene, scale, axial, around) =>
        {
            PixelPoint Enlarged(PixelPoint point) => new(point.X * scale, point.Y * scale);
            var first = scene.Silhouette(false, -20, 20);
            var second = scene.Silhouette(true, -20, 20);
            var large = CylinderPose.FromSilhouettes(
                new PixelSegment(Enlarged(first.Start), Enlarged(first.End)),
                new PixelSegment(Enlarged(second.Start), Enlarged(second.End)),
                PixelLength.FromPixels(scene.Focal * scale),
                focalAssumed: false,
                Enlarged(scene.PrincipalPoint));
            Assert.NotNull(large);
            var at = new SurfacePoint(axial, Angle.FromRadians(around));
            var expected = Enlarged(new CylinderProjection(CylinderPoseTests.PoseOf(scene)).ToPhoto(at));
            Assert.True(new CylinderProjection(large).ToPhoto(at).DistanceTo(expected).Pixels < 1e-5 * scale);
        });

    private static CylinderPose PoseOf(TubeScene scene, Func<PixelPoint, PixelPoint> move)
    {
        var first = scene.Silhouette(false, -20, 20);
        var second = scene.Silhouette(true, -20, 20);
        var pose = CylinderPose.FromSilhouettes(
            new PixelSegment(move(first.Start), move(first.End)),
            new PixelSegment(move(second.Start), move(second.End)),
            PixelLength.FromPixels(scene.Focal),
            focalAssumed: false,
            scene.PrincipalPoint);
        Assert.NotNull(pose);
        return pose;
    }

    private static PixelPoint Turned(PixelPoint about, PixelPoint point, double turn)
    {
        var (sine, cosine) = Math.SinCos(turn);
        var (x, y) = (point.X - about.X, point.Y - about.Y);
        return new PixelPoint(about.X + (cosine * x) - (sine * y), about.Y + (sine * x) + (cosine * y));
    }

    private static Vector3D Turned(Vector3D vector, double turn)
    {
        var (sine, cosine) = Math.SinCos(turn);
        return new Vector3D((cosine * vector.X) - (sine * vector.Y), (sine * vector.X) + (cosine * vector.Y), vector.Z);
    }
}
