using System;
using InscriptionLab.Measures;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

/// <summary>Lamps as a user states them, against directions worked out in the scene's own frame.</summary>
public sealed class LampTests
{
    [Theory]
    [InlineData(0, 16, 0.0, 0.0)]
    [InlineData(180, 16, 0.3, 0.2)]
    [InlineData(-90, 24, -0.2, 0.4)]
    [InlineData(45, 18, 0.25, -0.3)]
    public void A_lamp_stated_by_its_side_of_the_picture_stands_where_the_scene_has_it(double side, double height, double tilt, double roll)
    {
        var scene = new TubeScene { Tilt = tilt, Roll = roll };
        var lamp = Lamp.FromPicture(CylinderPoseTests.PoseOf(scene), Angle.FromDegrees(side), Angle.FromDegrees(height));
        var (_, right, down, forward) = scene.Camera();
        var (sinSide, cosSide) = Math.SinCos(side * Math.PI / 180);
        var (sinHeight, cosHeight) = Math.SinCos(height * Math.PI / 180);
        var world = (right * (cosSide * cosHeight)) + (down * (sinSide * cosHeight)) + (forward * -sinHeight);

        // The generatrix that faces the camera, in the world: outward along the scene's Z, the arc toward -Y, the axis X.
        var facing = scene.Facing();
        var (sin, cos) = Math.SinCos(facing);
        var local = lamp.At(default);
        Assert.Equal(world.X, local.X, 9);
        Assert.Equal(world.Dot(new Vector3D(0, -cos, -sin)), local.Y, 9);
        Assert.Equal(world.Dot(new Vector3D(0, -sin, cos)), local.Z, 9);
    }
}
