using System;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Sizes;

/// <summary>A cylinder in millimetres that a camera of known place sees between two outlines, lying along the plane of a scale. World frame as <see cref="PlaneCamera"/>.</summary>
public sealed class SeenCylinder
{
    private readonly PlaneCamera _camera;
    private readonly Vector3D _axisPoint;
    private readonly Vector3D _across;
    private readonly Vector3D _up;

    private SeenCylinder(PlaneCamera camera, Vector3D axisPoint, Vector3D direction, double radius)
    {
        _camera = camera;
        _axisPoint = axisPoint;
        Direction = direction;
        Radius = radius;
        var toEye = camera.Centre - axisPoint;
        _up = (toEye - (direction * toEye.Dot(direction))).Normalised();
        _across = direction.Cross(_up);
    }

    /// <summary>Gets the radius in millimetres.</summary>
    public double Radius { get; }

    /// <summary>Gets the direction of the axis, of unit length.</summary>
    public Vector3D Direction { get; }

    /// <summary>Finds the cylinder. Each outline and the camera's centre span a plane that touches it; both planes meet along its direction, and the distance follows from where it lies above the scale.</summary>
    /// <param name="camera">Camera, from the scale.</param>
    /// <param name="first">One outline in the picture, without distortion.</param>
    /// <param name="second">The other outline.</param>
    /// <param name="axisAbove">Height of the axis above the scale's plane in millimetres; null where tube and scale lie on one plane.</param>
    /// <returns>The cylinder, or null where the outlines and the camera do not make one that lies along the plane.</returns>
    public static SeenCylinder? Of(PlaneCamera camera, PixelSegment first, PixelSegment second, double? axisAbove)
    {
        ArgumentNullException.ThrowIfNull(camera);
        var (one, other) = (Plane(camera, first), Plane(camera, second));
        if (one.Dot(other) < 0)
        {
            other *= -1;
        }

        var cross = one.Cross(other);
        if (!(cross.Norm > 1e-9))
        {
            return null;
        }

        // The axis lies in the plane half-way between both, whose normal is the sum of theirs; half the angle between them is seen from the axis to either side.
        var direction = cross.Normalised();
        var toAxis = direction.Cross((one + other).Normalised());
        toAxis = toAxis.Z < 0 ? toAxis * -1 : toAxis;
        var half = Math.Asin(Math.Min(1, (one - other).Norm / 2));
        var eye = -camera.Centre.Z;
        var radius = axisAbove is { } height
            ? (eye - height) * Math.Sin(half) / toAxis.Z
            : eye / (1 + (toAxis.Z / Math.Sin(half)));

        // A tube lies along the plane of the scale to within some degrees; what does not is no tube beside a scale.
        const double LargestSlope = 0.26;
        return radius > 0 && double.IsFinite(radius) && toAxis.Z > 0 && Math.Abs(direction.Z) < LargestSlope
            ? new SeenCylinder(camera, camera.Centre + (toAxis * (radius / Math.Sin(half))), direction, radius)
            : null;
    }

    /// <summary>Gives the place of the surface that a picture point shows: along the axis and round it from the line that faces the camera, both in millimetres.</summary>
    /// <returns>The place, or null where the point shows no part of the cylinder.</returns>
    public (double Along, double Round)? ToSurface(PixelPoint at)
    {
        var eye = _camera.Centre;
        var ray = (_camera.BackProject(at, 0) - eye).Normalised();
        var from = eye - _axisPoint;
        var (rx, ry, fx, fy) = (ray.Dot(_across), ray.Dot(_up), from.Dot(_across), from.Dot(_up));
        var (a, b, c) = ((rx * rx) + (ry * ry), (rx * fx) + (ry * fy), (fx * fx) + (fy * fy) - (Radius * Radius));
        var root = (b * b) - (a * c);
        if (!(root >= 0) || !(a > 0))
        {
            return null;
        }

        var distance = (-b - Math.Sqrt(root)) / a;
        var point = from + (ray * distance);
        return (point.Dot(Direction), Radius * Math.Atan2(point.Dot(_across), point.Dot(_up)));
    }

    /// <summary>Gives the place along the axis at which the plane of a picture point on an outline touches the cylinder, in millimetres.</summary>
    public double AlongOfOutline(PixelPoint at)
    {
        var eye = _camera.Centre;
        var ray = (_camera.BackProject(at, 0) - eye).Normalised();
        var across = ray - (Direction * ray.Dot(Direction));
        var from = eye - _axisPoint;
        var near = from - (Direction * from.Dot(Direction));

        // Nearest to the axis, the ray touches.
        var distance = -near.Dot(across) / across.Dot(across);
        return (from + (ray * distance)).Dot(Direction);
    }

    private static Vector3D Plane(PlaneCamera camera, PixelSegment outline)
    {
        var eye = camera.Centre;
        return (camera.BackProject(outline.Start, 0) - eye).Cross(camera.BackProject(outline.End, 0) - eye).Normalised();
    }
}
