using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>
/// A circular cylinder of radius 1 (the tube's radius is the unit of length) in front of a pinhole camera.
/// Camera axes: x right, y down, z forward; the camera's centre is the origin.
/// </summary>
/// <param name="Focal">Focal length in pixels.</param>
/// <param name="FocalAssumed">True where no EXIF data gave the focal length.</param>
/// <param name="PrincipalPoint">Principal point in the photo.</param>
/// <param name="AxisPoint">The point of the axis nearest the camera's centre: x, y, z in radii.</param>
/// <param name="AxisDirection">Unit vector along the axis, x, y, z, chosen to run to the right (down where vertical) in the photo.</param>
public sealed record CylinderPose(
    PixelLength Focal,
    bool FocalAssumed,
    PixelPoint PrincipalPoint,
    Vector3D AxisPoint,
    Vector3D AxisDirection)
{
    /// <summary>
    /// Gives the one cylinder that has two given outlines. Each outline and the camera's centre span a plane that touches the cylinder:
    /// the axis runs along the intersection of the two planes, in the plane that halves the angle between them, at distance 1 from both.
    /// </summary>
    /// <param name="first">One silhouette, in pixels.</param>
    /// <param name="second">The other silhouette, in pixels; the two may not cross between the ends given.</param>
    /// <param name="focal">Focal length, above zero.</param>
    /// <param name="focalAssumed">True where the focal length is a guess.</param>
    /// <param name="principalPoint">Principal point: the centre of an uncropped picture.</param>
    /// <returns>The cylinder, or null where the two outlines bound no cylinder in front of the camera (they coincide or cross).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The focal length is not above zero.</exception>
    public static CylinderPose? FromSilhouettes(PixelSegment first, PixelSegment second, PixelLength focal, bool focalAssumed, PixelPoint principalPoint)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(focal.Pixels, nameof(focal));
        Vector3D Ray(PixelPoint point) => new((point.X - principalPoint.X) / focal.Pixels, (point.Y - principalPoint.Y) / focal.Pixels, 1);

        var between = Ray(new PixelPoint(
            (first.Start.X + first.End.X + second.Start.X + second.End.X) / 4,
            (first.Start.Y + first.End.Y + second.Start.Y + second.End.Y) / 4));
        var firstPlane = Ray(first.Start).Cross(Ray(first.End));
        var secondPlane = Ray(second.Start).Cross(Ray(second.End));
        if (firstPlane.Norm == 0 || secondPlane.Norm == 0)
        {
            return null;
        }

        firstPlane = firstPlane.Normalised() * Math.Sign(firstPlane.Dot(between));
        secondPlane = secondPlane.Normalised() * Math.Sign(secondPlane.Dot(between));
        var along = firstPlane.Cross(secondPlane);
        if (!(along.Norm > 0))
        {
            return null;
        }

        var direction = along.Normalised();
        var axisPoint = (firstPlane + secondPlane) * (1 / (1 + firstPlane.Dot(secondPlane)));
        var middle = PointOfAxisNearest(between, axisPoint, direction);
        if (middle is not { Z: > 0 } seen)
        {
            return null;
        }

        var imageX = (direction.X * seen.Z) - (seen.X * direction.Z);
        var imageY = (direction.Y * seen.Z) - (seen.Y * direction.Z);
        var runsRight = Math.Abs(imageX) > Math.Abs(imageY) * VerticalSlope ? imageX > 0 : imageY > 0;
        return new CylinderPose(focal, focalAssumed, principalPoint, axisPoint, runsRight ? direction : direction * -1);
    }

    /// <summary>An image direction steeper than 1 to this slope counts as vertical and runs down (about 0.06 degrees).</summary>
    private const double VerticalSlope = 1e-3;

    private static Vector3D? PointOfAxisNearest(Vector3D ray, Vector3D axisPoint, Vector3D direction)
    {
        var unit = ray.Normalised();
        var cosine = unit.Dot(direction);
        var square = 1 - (cosine * cosine);
        if (!(square > 0))
        {
            return null;
        }

        var axial = unit.Dot(axisPoint) * cosine / square;
        return axisPoint + (direction * axial);
    }
}
