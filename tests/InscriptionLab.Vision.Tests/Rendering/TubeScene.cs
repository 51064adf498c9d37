using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>
/// A tube in front of a pinhole camera, in millimetres, worked out in the world's frame (not in the camera's, as the code under test does).
/// The axis is the X axis; the angle of a surface point is 0 toward +Z and grows toward -Y. Picture coordinates: centre of the top-left pixel at (0, 0).
/// </summary>
internal sealed record TubeScene
{
    public int Width { get; init; } = 1200;

    public int Height { get; init; } = 900;

    public double Focal { get; init; } = 1900;

    public double Radius { get; init; } = 16;

    /// <summary>Gets where the tube begins on its axis.</summary>
    public double Start { get; init; } = -1000;

    /// <summary>Gets where the tube ends on its axis.</summary>
    public double End { get; init; } = 1000;

    public double Distance { get; init; } = 220;

    /// <summary>Gets the axis point at the middle of the picture.</summary>
    public double Target { get; init; }

    /// <summary>Gets how far the camera stands off square along the axis, radians.</summary>
    public double Tilt { get; init; }

    /// <summary>Gets the angle round the tube from which the camera looks, radians.</summary>
    public double Azimuth { get; init; }

    /// <summary>Gets the camera's turn about its own axis, radians.</summary>
    public double Roll { get; init; }

    /// <summary>Gets the sideways shift of the principal axis from the tube's axis, millimetres.</summary>
    public double OffAxis { get; init; }

    /// <summary>Gets the paint of the tube, or null for plain metal. Columns along the axis, rows round it, middle of the picture at (Target, angle 0).</summary>
    public GrayImage? Paint { get; init; }

    /// <summary>Gets the turn of the tube about its axis, radians; positive turns carry the paint toward -Y.</summary>
    public double Turn { get; init; }

    /// <summary>Gets how far the tube was pushed along its axis.</summary>
    public double Push { get; init; }

    public double PaintPixelsPerMillimetre { get; init; } = 12;

    /// <summary>Gets a value indicating whether brightness varies over the tube; without it the paint is shown as it is.</summary>
    public bool Shaded { get; init; } = true;

    /// <summary>Gets the standard deviation of the added noise, grey levels.</summary>
    public double Noise { get; init; } = 2;

    public int Seed { get; init; } = 1;

    public PixelPoint PrincipalPoint => new((Width - 1) / 2.0, (Height - 1) / 2.0);

    public (Vector3D Centre, Vector3D Right, Vector3D Down, Vector3D Forward) Camera()
    {
        var direction = new Vector3D(Math.Sin(Tilt), -Math.Sin(Azimuth) * Math.Cos(Tilt), Math.Cos(Azimuth) * Math.Cos(Tilt));
        var forward = direction * -1;
        var up = new Vector3D(0, Math.Cos(Azimuth), Math.Sin(Azimuth));
        up = (up - (forward * up.Dot(forward))).Normalised();
        var right = forward.Cross(up);
        var rolledRight = (right * Math.Cos(Roll)) + (up * Math.Sin(Roll));
        var rolledDown = (right * Math.Sin(Roll)) - (up * Math.Cos(Roll));
        return (new Vector3D(Target, 0, 0) + (direction * Distance) + (up * OffAxis), rolledRight, rolledDown, forward);
    }

    public Vector3D SurfaceAt(double axial, double around) => new(axial, -Radius * Math.Sin(around), Radius * Math.Cos(around));

    public PixelPoint Project(Vector3D point)
    {
        var (centre, right, down, forward) = Camera();
        var from = point - centre;
        var depth = from.Dot(forward);
        return new PixelPoint((Focal * from.Dot(right) / depth) + PrincipalPoint.X, (Focal * from.Dot(down) / depth) + PrincipalPoint.Y);
    }

    /// <summary>The angle that faces the camera.</summary>
    public double Facing()
    {
        var centre = Camera().Centre;
        return Math.Atan2(-centre.Y, centre.Z);
    }

    /// <summary>The image of one silhouette between two axial positions.</summary>
    public PixelSegment Silhouette(bool positive, double from, double to)
    {
        var centre = Camera().Centre;
        var distance = Math.Sqrt((centre.Y * centre.Y) + (centre.Z * centre.Z));
        var around = Facing() + (positive ? 1 : -1) * Math.Acos(Radius / distance);
        return new PixelSegment(Project(SurfaceAt(from, around)), Project(SurfaceAt(to, around)));
    }

    public PixelSegment Axis(double from, double to) => new(Project(new Vector3D(from, 0, 0)), Project(new Vector3D(to, 0, 0)));
}
