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
    Vector3D AxisDirection);
