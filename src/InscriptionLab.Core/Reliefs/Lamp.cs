using System;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Reliefs;

/// <summary>A distant lamp as it stands to a tube. The default value shines square on the generatrix that faces the camera.</summary>
/// <param name="Around">Angle round the axis from the generatrix that faces the camera, positive toward the lower side of the picture for a tube that runs to the right.</param>
/// <param name="Along">Angle from the plane square to the axis toward the axis' end: positive for a lamp to the right of a tube that runs to the right.</param>
public readonly record struct Lamp(Angle Around, Angle Along)
{
    /// <summary>Gives the unit vector to the lamp in the frame of a place of the surface: X along the axis, Y along the arc, Z outward.</summary>
    /// <param name="around">Angle of the place round the axis.</param>
    public Vector3D At(Angle around)
    {
        var (sinAlong, cosAlong) = Math.SinCos(Along.Radians);
        var (sin, cos) = Math.SinCos(Around.Radians - around.Radians);
        return new Vector3D(sinAlong, cosAlong * sin, cosAlong * cos);
    }

    /// <summary>Gives a lamp from the side of the picture on which it stands.</summary>
    /// <param name="pose">The tube.</param>
    /// <param name="side">Direction of the lamp over the picture: from the X axis toward the Y axis, so 0 is right and 90 degrees is below.</param>
    /// <param name="height">Its height over the plane that faces the camera: 0 rakes, 90 degrees shines from the camera.</param>
    public static Lamp FromPicture(CylinderPose pose, Angle side, Angle height)
    {
        ArgumentNullException.ThrowIfNull(pose);
        var (sinSide, cosSide) = Math.SinCos(side.Radians);
        var (sinHeight, cosHeight) = Math.SinCos(height.Radians);
        var direction = new Vector3D(cosSide * cosHeight, sinSide * cosHeight, -sinHeight);
        var toCamera = pose.AxisPoint.Normalised() * -1;
        var across = pose.AxisDirection.Cross(toCamera);
        return new Lamp(
            Angle.FromRadians(Math.Atan2(direction.Dot(across), direction.Dot(toCamera))),
            Angle.FromRadians(Math.Asin(Math.Clamp(direction.Dot(pose.AxisDirection), -1, 1))));
    }
}
