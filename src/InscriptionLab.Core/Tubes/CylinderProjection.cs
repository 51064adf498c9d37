using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>The exact way between the surface of a cylinder and its picture (pinhole camera): projection one way, the meeting of a ray with the surface the other.</summary>
public sealed record CylinderProjection
{
    private readonly double _focal;
    private readonly Vector3D _across;
    private readonly Vector3D _toCamera;
    private readonly double _distanceSquared;

    /// <summary>Prepares the projection of a cylinder.</summary>
    /// <exception cref="ArgumentException">The camera's centre is not outside the cylinder.</exception>
    public CylinderProjection(CylinderPose pose)
    {
        ArgumentNullException.ThrowIfNull(pose);
        Pose = pose;
        Distance = pose.AxisPoint.Norm;
        if (!(Distance > 1))
        {
            throw new ArgumentException("The camera must be outside the cylinder.", nameof(pose));
        }

        _focal = pose.Focal.Pixels;
        _distanceSquared = Distance * Distance;
        _toCamera = pose.AxisPoint * (-1 / Distance);
        _across = pose.AxisDirection.Cross(_toCamera);
    }

    /// <summary>Gets the cylinder.</summary>
    public CylinderPose Pose { get; }

    /// <summary>Gets the distance from the camera's centre to the axis, in radii.</summary>
    public double Distance { get; }

    /// <summary>Gets the angle from the generatrix nearest the camera to each silhouette: the arc cosine of radius over distance, a little under 90 degrees.</summary>
    public Angle Limb => Angle.FromRadians(Math.Acos(1 / Distance));

    /// <summary>Gives a surface point in space, in radii from the camera's centre.</summary>
    public Vector3D ToSpace(SurfacePoint point)
    {
        var (sin, cos) = Math.SinCos(point.Around.Radians);
        return Pose.AxisPoint + (Pose.AxisDirection * point.Axial) + (_toCamera * cos) + (_across * sin);
    }

    /// <summary>Projects a surface point, whether it faces the camera or not.</summary>
    public PixelPoint ToPhoto(SurfacePoint point) => Project(ToSpace(point));

    /// <summary>Projects a point in space (radii from the camera's centre).</summary>
    public PixelPoint Project(Vector3D point) => new(
        (_focal * point.X / point.Z) + Pose.PrincipalPoint.X,
        (_focal * point.Y / point.Z) + Pose.PrincipalPoint.Y);

    /// <summary>Gives the surface point that a photo point shows, or null where the ray misses the tube.</summary>
    public SurfacePoint? ToSurface(PixelPoint photoPoint)
    {
        var axis = Pose.AxisDirection;
        var ray = RayOf(photoPoint);
        var square = ray - (axis * ray.Dot(axis));
        var quadratic = square.Dot(square);
        var half = square.Dot(Pose.AxisPoint);
        var discriminant = (half * half) - (quadratic * (_distanceSquared - 1));
        if (discriminant < 0)
        {
            return null;
        }

        var depth = (_distanceSquared - 1) / (half + Math.Sqrt(discriminant));
        if (!(depth > 0))
        {
            return null;
        }

        var point = ray * depth;
        var axial = point.Dot(axis);
        var radial = point - (axis * axial) - Pose.AxisPoint;
        return new SurfacePoint(axial, Angle.FromRadians(Math.Atan2(radial.Dot(_across), radial.Dot(_toCamera))));
    }

    /// <summary>Gives the axial position, in radii, of the axis point whose image lies nearest to the ray of a photo point; null where the ray runs along the axis.</summary>
    public double? AxialOf(PixelPoint photoPoint)
    {
        var ray = RayOf(photoPoint).Normalised();
        var cosine = ray.Dot(Pose.AxisDirection);
        var square = 1 - (cosine * cosine);
        return square > 0 ? ray.Dot(Pose.AxisPoint) * cosine / square : null;
    }

    /// <summary>Gives the derivative of the picture by the axial position: pixels per radius.</summary>
    public (double X, double Y) AlongAxis(SurfacePoint point) => Derivative(ToSpace(point), Pose.AxisDirection);

    /// <summary>Gives the derivative of the picture by the arc: pixels per radius of arc (per radian).</summary>
    public (double X, double Y) AlongArc(SurfacePoint point)
    {
        var (sin, cos) = Math.SinCos(point.Around.Radians);
        return Derivative(ToSpace(point), (_across * cos) - (_toCamera * sin));
    }

    /// <summary>Gives the image of one silhouette between two axial positions.</summary>
    /// <param name="positive">True for the silhouette at positive angles (the lower one of a tube that runs to the right).</param>
    /// <param name="from">Axial position of the start, in radii.</param>
    /// <param name="to">Axial position of the end, in radii.</param>
    public PixelSegment Silhouette(bool positive, double from, double to)
    {
        var around = positive ? Limb : Angle.FromRadians(-Limb.Radians);
        return new PixelSegment(ToPhoto(new SurfacePoint(from, around)), ToPhoto(new SurfacePoint(to, around)));
    }

    private Vector3D RayOf(PixelPoint point) => new(
        (point.X - Pose.PrincipalPoint.X) / _focal,
        (point.Y - Pose.PrincipalPoint.Y) / _focal,
        1);

    private (double X, double Y) Derivative(Vector3D at, Vector3D by)
    {
        var scale = _focal / (at.Z * at.Z);
        return (scale * ((by.X * at.Z) - (at.X * by.Z)), scale * ((by.Y * at.Z) - (at.Y * by.Z)));
    }
}
