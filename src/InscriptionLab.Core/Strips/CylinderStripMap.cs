using System;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Strips;

/// <summary>The map of a strip unrolled from a tube: X along the axis, Y along the arc, the same scale in both, exact both ways.</summary>
public sealed record CylinderStripMap : StripMap
{
    private readonly CylinderProjection _projection;

    /// <summary>Makes the map.</summary>
    /// <param name="pose">The cylinder.</param>
    /// <param name="pixelsPerRadius">Strip pixels per radius, along the axis and along the arc; above zero.</param>
    /// <param name="firstAxial">Axial position, in radii, of the centres of the strip's first column.</param>
    /// <param name="firstAround">Angle of the centres of the strip's first row.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is not above zero.</exception>
    /// <exception cref="ArgumentException">The camera's centre is not outside the cylinder.</exception>
    public CylinderStripMap(CylinderPose pose, double pixelsPerRadius, double firstAxial, Angle firstAround)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pixelsPerRadius);
        _projection = new CylinderProjection(pose);
        PixelsPerRadius = pixelsPerRadius;
        FirstAxial = firstAxial;
        FirstAround = firstAround;
    }

    /// <summary>Gets the cylinder.</summary>
    public CylinderPose Pose => _projection.Pose;

    /// <summary>Gets the strip pixels per radius, along the axis and along the arc.</summary>
    public double PixelsPerRadius { get; }

    /// <summary>Gets the axial position of the strip's first column, in radii.</summary>
    public double FirstAxial { get; }

    /// <summary>Gets the angle of the strip's first row.</summary>
    public Angle FirstAround { get; }

    /// <summary>Gives the surface point shown at a strip point.</summary>
    public SurfacePoint ToSurface(PixelPoint point) => new(
        FirstAxial + (point.X / PixelsPerRadius),
        Angle.FromRadians(FirstAround.Radians + (point.Y / PixelsPerRadius)));

    /// <summary>Gives the strip point of a surface point.</summary>
    public PixelPoint FromSurface(SurfacePoint point) => new(
        (point.Axial - FirstAxial) * PixelsPerRadius,
        (point.Around.Radians - FirstAround.Radians) * PixelsPerRadius);

    /// <inheritdoc/>
    public override PixelPoint ToPhoto(PixelPoint point) => _projection.ToPhoto(ToSurface(point));

    /// <inheritdoc/>
    public override PixelPoint? ToStrip(PixelPoint photoPoint) =>
        _projection.ToSurface(photoPoint) is { } surface ? FromSurface(surface) : null;

    /// <inheritdoc/>
    public override double Stretch(PixelPoint point)
    {
        var surface = ToSurface(point);
        var facing = _projection.AlongArc(surface with { Around = default });
        var here = _projection.AlongArc(surface);
        return Length(facing) / Length(here);
    }

    /// <inheritdoc/>
    public override void FillRun(PixelPoint first, double stepX, double stepY, Span<PixelPoint> photoPoints)
    {
        if (stepY != 0)
        {
            base.FillRun(first, stepX, stepY, photoPoints);
            return;
        }

        // The angle stays the same along a row: one sine and cosine serve the whole run.
        var start = _projection.ToSpace(ToSurface(first));
        var step = Pose.AxisDirection * (stepX / PixelsPerRadius);
        for (var i = 0; i < photoPoints.Length; i++)
        {
            photoPoints[i] = _projection.Project(start + (step * i));
        }
    }

    private static double Length((double X, double Y) vector) => Math.Sqrt((vector.X * vector.X) + (vector.Y * vector.Y));
}
