using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>A pinhole camera before a plane. World frame in millimetres: X and Y lie in the plane and turn as the picture's, Z points away from the camera.</summary>
/// <param name="Focal">Focal length in pixels.</param>
/// <param name="PrincipalPoint">Where the camera's axis meets the picture.</param>
/// <param name="Row0">First row of the rotation from world to camera.</param>
/// <param name="Row1">Second row.</param>
/// <param name="Row2">Third row.</param>
/// <param name="Shift">World origin in camera coordinates, in millimetres; its Z is above zero.</param>
public sealed record PlaneCamera(double Focal, PixelPoint PrincipalPoint, Vector3D Row0, Vector3D Row1, Vector3D Row2, Vector3D Shift)
{
    /// <summary>Gets the camera's centre in the world.</summary>
    public Vector3D Centre => (Row0 * -Shift.X) + (Row1 * -Shift.Y) + (Row2 * -Shift.Z);

    /// <summary>Gets the angle between the camera's axis and the plane's normal.</summary>
    public Angle Tilt => Angle.FromRadians(Math.Acos(Math.Clamp(Row2.Z, -1, 1)));

    /// <summary>Gives the picture of a world point.</summary>
    public PixelPoint Project(Vector3D world)
    {
        var depth = Row2.Dot(world) + Shift.Z;
        return new PixelPoint(
            PrincipalPoint.X + (Focal * (Row0.Dot(world) + Shift.X) / depth),
            PrincipalPoint.Y + (Focal * (Row1.Dot(world) + Shift.Y) / depth));
    }

    /// <summary>Gives the world point at which the ray of a picture point meets a plane of constant Z.</summary>
    public Vector3D BackProject(PixelPoint at, double planeZ) => BackProject(at, planeZ, Centre);

    /// <summary>Gives the same with the camera's centre already worked out.</summary>
    internal Vector3D BackProject(PixelPoint at, double planeZ, Vector3D centre)
    {
        var x = (at.X - PrincipalPoint.X) / Focal;
        var y = (at.Y - PrincipalPoint.Y) / Focal;
        var ray = (Row0 * x) + (Row1 * y) + Row2;
        return centre + (ray * ((planeZ - centre.Z) / ray.Z));
    }

    /// <summary>Gives the pixels a millimetre covers at a world point, as a mean over directions in the plane.</summary>
    public double PixelsPerMillimetre(Vector3D world)
    {
        const double Step = 0.5;
        var left = Project(world with { X = world.X - Step });
        var right = Project(world with { X = world.X + Step });
        var up = Project(world with { Y = world.Y - Step });
        var down = Project(world with { Y = world.Y + Step });
        var area = Math.Abs(((right.X - left.X) * (down.Y - up.Y)) - ((right.Y - left.Y) * (down.X - up.X)));
        return Math.Sqrt(area);
    }

    /// <summary>Turns the camera by a small rotation vector given in camera coordinates.</summary>
    public PlaneCamera Turned(Vector3D rotation)
    {
        var angle = rotation.Norm;
        if (angle < 1e-15)
        {
            return this;
        }

        var axis = rotation * (1 / angle);
        var (sin, cos) = Math.SinCos(angle);
        Vector3D Column(Vector3D v) => (v * cos) + (axis.Cross(v) * sin) + (axis * (axis.Dot(v) * (1 - cos)));
        var x = Column(new Vector3D(Row0.X, Row1.X, Row2.X));
        var y = Column(new Vector3D(Row0.Y, Row1.Y, Row2.Y));
        var z = Column(new Vector3D(Row0.Z, Row1.Z, Row2.Z));
        return this with
        {
            Row0 = new Vector3D(x.X, y.X, z.X),
            Row1 = new Vector3D(x.Y, y.Y, z.Y),
            Row2 = new Vector3D(x.Z, y.Z, z.Z),
        };
    }
}
