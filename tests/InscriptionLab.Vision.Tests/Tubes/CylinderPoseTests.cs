using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

public sealed class CylinderPoseTests
{
    private static readonly Gen<TubeScene> Scenes =
        from radius in Gen.Double[8, 40]
        from distance in Gen.Double[150, 400]
        from tilt in Gen.Double[-0.5, 0.5]
        from azimuth in Gen.Double[-1, 1]
        from roll in Gen.Double[-3.1, 3.1]
        from offAxis in Gen.Double[-15, 15]
        select new TubeScene { Radius = radius, Distance = distance, Tilt = tilt, Azimuth = azimuth, Roll = roll, OffAxis = offAxis };

    [Fact]
    public void The_pose_from_two_silhouettes_is_the_cylinder_that_cast_them() =>
        Scenes.Sample(scene =>
        {
            var pose = PoseOf(scene);
            var (centre, right, down, forward) = scene.Camera();
            Vector3D InCamera(Vector3D vector) => new(vector.Dot(right), vector.Dot(down), vector.Dot(forward));
            var direction = InCamera(new Vector3D(1, 0, 0));
            var axisPoint = InCamera(new Vector3D(0, -centre.Y, -centre.Z)) * (1 / scene.Radius);
            Assert.Equal(1, Math.Abs(direction.Dot(pose.AxisDirection)), 1e-9);
            Assert.True((axisPoint - pose.AxisPoint).Norm < 1e-8 * axisPoint.Norm);
        });

    [Fact]
    public void Axial_and_arc_lengths_are_those_of_the_scene_in_radii() =>
        Gen.Select(Scenes, Gen.Double[-2, 2], Gen.Double[-1.2, 1.2]).Sample((scene, axial, around) =>
        {
            var projection = new CylinderProjection(PoseOf(scene));
            var origin = projection.ToSurface(scene.Project(scene.SurfaceAt(0, scene.Facing())));
            var seen = projection.ToSurface(scene.Project(scene.SurfaceAt(axial * scene.Radius, scene.Facing() + (around * projection.Limb.Radians / 1.3))));
            Assert.NotNull(origin);
            Assert.NotNull(seen);
            Assert.Equal(Math.Abs(axial), Math.Abs(seen.Value.Axial - origin.Value.Axial), 1e-6);
            Assert.Equal(Math.Abs(around * projection.Limb.Radians / 1.3), Math.Abs(seen.Value.Around.Radians), 1e-6);
        });

    [Fact]
    public void The_silhouettes_of_a_pose_are_the_lines_it_was_made_from() =>
        Scenes.Sample(scene =>
        {
            var projection = new CylinderProjection(PoseOf(scene));
            for (var i = 0; i < 2; i++)
            {
                var given = scene.Silhouette(i == 1, -20, 20);
                var one = DistanceToLine(projection.Silhouette(true, -1, 1), given.Start);
                var other = DistanceToLine(projection.Silhouette(false, -1, 1), given.Start);
                Assert.True(Math.Min(one, other) < 1e-6);
            }
        });

    [Fact]
    public void A_picture_twice_as_large_gives_the_same_cylinder() =>
        Scenes.Sample(scene =>
        {
            var small = PoseOf(scene);
            var large = PoseOf(scene with { Width = scene.Width * 2, Height = scene.Height * 2, Focal = scene.Focal * 2 });
            Assert.True((small.AxisPoint - large.AxisPoint).Norm < 1e-8 * small.AxisPoint.Norm);
        });

    [Fact]
    public void The_axis_runs_to_the_right_in_the_photo_or_down_where_vertical() =>
        Scenes.Sample(scene =>
        {
            var projection = new CylinderProjection(PoseOf(scene));
            var from = projection.ToPhoto(new SurfacePoint(0, default));
            var (x, y) = projection.AlongAxis(new SurfacePoint(0, default));
            Assert.True(x > 0 || (Math.Abs(x) < 0.05 * Math.Abs(y)), $"{from} {x} {y}");
        });

    /// <summary>A tube that runs away from the camera by 50 to 70 degrees, its outlines named in either order: the same cylinder, in front of the camera.</summary>
    [Fact]
    public void A_tube_that_runs_steeply_away_has_its_pose_whichever_outline_comes_first() =>
        Gen.Select(Scenes, Gen.Double[0.87, 1.22], Gen.Bool).Sample((scene, tilt, other) =>
        {
            var steep = scene with { Tilt = other ? -tilt : tilt };
            var (one, two) = (steep.Silhouette(false, -10, 10), steep.Silhouette(true, -10, 10));
            var pose = CylinderPose.FromSilhouettes(one, two, PixelLength.FromPixels(steep.Focal), focalAssumed: false, steep.PrincipalPoint);
            var swapped = CylinderPose.FromSilhouettes(two, one, PixelLength.FromPixels(steep.Focal), focalAssumed: false, steep.PrincipalPoint);
            Assert.NotNull(pose);
            Assert.NotNull(swapped);
            Assert.True((pose.AxisPoint - swapped.AxisPoint).Norm < 1e-8 * pose.AxisPoint.Norm);
            Assert.Equal(1, pose.AxisDirection.Dot(swapped.AxisDirection), 1e-9);
        });

    [Fact]
    public void Outlines_that_coincide_bound_no_cylinder()
    {
        var line = new PixelSegment(new PixelPoint(0, 10), new PixelPoint(100, 10));
        Assert.Null(CylinderPose.FromSilhouettes(line, line, PixelLength.FromPixels(1000), focalAssumed: true, new PixelPoint(50, 40)));
    }

    /// <summary>The derivatives are those of the projection itself, by central differences.</summary>
    [Fact]
    public void The_derivatives_of_a_cylinders_picture_are_what_its_points_move_by() =>
        Gen.Select(Scenes, Gen.Double[-2, 2], Gen.Double[-1.2, 1.2]).Sample((scene, axial, around) =>
        {
            const double Step = 1e-5;
            var projection = new CylinderProjection(PoseOf(scene));
            PixelPoint At(double along, double round) => projection.ToPhoto(new SurfacePoint(axial + along, Angle.FromRadians(around + round)));
            var at = new SurfacePoint(axial, Angle.FromRadians(around));
            void Same((double X, double Y) derivative, PixelPoint before, PixelPoint behind)
            {
                Assert.Equal((behind.X - before.X) / (2 * Step), derivative.X, 1e-3);
                Assert.Equal((behind.Y - before.Y) / (2 * Step), derivative.Y, 1e-3);
            }

            Same(projection.AlongAxis(at), At(-Step, 0), At(Step, 0));
            Same(projection.AlongArc(at), At(0, -Step), At(0, Step));
        });

    [Fact]
    public void A_picture_of_a_point_of_the_axis_leads_back_to_it() =>
        Gen.Select(Scenes, Gen.Double[-2, 2]).Sample((scene, axial) =>
        {
            var projection = new CylinderProjection(PoseOf(scene));
            var point = projection.Pose.AxisPoint + (projection.Pose.AxisDirection * axial);
            Assert.Equal(axial, projection.AxialOf(projection.Project(point))!.Value, 1e-9);
        });

    internal static CylinderPose PoseOf(TubeScene scene)
    {
        var pose = CylinderPose.FromSilhouettes(
            scene.Silhouette(false, -20, 20),
            scene.Silhouette(true, -20, 20),
            PixelLength.FromPixels(scene.Focal),
            focalAssumed: false,
            scene.PrincipalPoint);
        Assert.NotNull(pose);
        return pose;
    }

    private static double DistanceToLine(PixelSegment line, PixelPoint point)
    {
        var x = line.End.X - line.Start.X;
        var y = line.End.Y - line.Start.Y;
        return Math.Abs(((point.X - line.Start.X) * y) - ((point.Y - line.Start.Y) * x)) / Math.Sqrt((x * x) + (y * y));
    }
}
