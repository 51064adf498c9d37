using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>
/// The plane of a flat ring seen by a pinhole camera, from the images of its two concentric circles. The one projective map is used that carries the
/// unit circle onto the outer ellipse and a smaller circle about the same centre onto the inner ellipse as nearly as two measured ellipses allow:
/// of the maps that keep the unit circle (the isometries of Klein's model of the hyperbolic plane), it is the shift that puts the inner ellipse's centre
/// where it was measured.
/// </summary>
public sealed record RingPlane
{
    /// <summary>Largest shift: the image of the centre lies this share of the outer radius off the outer ellipse's centre at most (a tilt of 45 degrees at six radii gives 0.12).</summary>
    private const double LargestShift = 0.25;

    /// <summary>Rounds that settle shift and inner radius together; each gains two digits or more.</summary>
    private const int Rounds = 12;

    private readonly double _cosine;
    private readonly double _sine;
    private readonly double _shift;
    private readonly double _shiftX;
    private readonly double _shiftY;

    /// <summary>Works out the plane.</summary>
    /// <param name="outer">Image of the ring's outer edge.</param>
    /// <param name="inner">Image of the ring's inner edge, inside the outer one.</param>
    /// <exception cref="ArgumentException">An ellipse has no size, or the inner one is not inside the outer one.</exception>
    public RingPlane(PixelEllipse outer, PixelEllipse inner)
    {
        if (!(outer.SemiMajor.Pixels > 0 && outer.SemiMinor.Pixels > 0 && inner.SemiMajor.Pixels > 0 && inner.SemiMinor.Pixels > 0))
        {
            throw new ArgumentException("Both ellipses must have a size.", nameof(outer));
        }

        Outer = outer;
        (_sine, _cosine) = Math.SinCos(outer.Rotation.Radians);
        var (x, y) = Normalise(inner.Centre);
        var offset = Math.Sqrt((x * x) + (y * y));

        // In the normalised plane the inner ellipse has area pi a b; a circle of radius r shifted by v has half axes r sqrt(1-v2)/sqrt(1-v2r2) and r (1-v2)/(1-v2r2).
        var area = inner.SemiMajor.Pixels * inner.SemiMinor.Pixels / (outer.SemiMajor.Pixels * outer.SemiMinor.Pixels);
        var radius = Math.Sqrt(area);
        double shift = 0;
        for (var i = 0; i < Rounds && radius < 1; i++)
        {
            var vr = shift * shift * radius * radius;
            shift = Math.Min(LargestShift, offset * (1 - vr) / (1 - (radius * radius)));
            var left = 1 - (shift * shift);
            vr = shift * shift * radius * radius;
            radius = Math.Sqrt(area * Math.Pow(1 - vr, 1.5) / Math.Pow(left, 1.5));
        }

        if (!(radius < 1 && offset + Math.Sqrt(area) < 1 + LargestShift))
        {
            throw new ArgumentException("The inner ellipse must lie inside the outer one.", nameof(inner));
        }

        InnerRadius = radius;
        _shift = shift;
        (_shiftX, _shiftY) = offset > 0 ? (x / offset, y / offset) : (1, 0);
    }

    /// <summary>Gets the image of the outer edge.</summary>
    public PixelEllipse Outer { get; }

    /// <summary>Gets the inner edge's radius as a share of the outer edge's.</summary>
    public double InnerRadius { get; }

    /// <summary>Gives the photo point of a point of the plane in outer radii from the ring's centre; the angle runs clockwise as seen, from an arbitrary but fixed start.</summary>
    public PixelPoint ToPhoto(double radius, Angle around)
    {
        var (sine, cosine) = Math.SinCos(around.Radians);
        var (x, y) = Shift(radius * cosine, radius * sine, _shift);
        var major = Outer.SemiMajor.Pixels * x;
        var minor = Outer.SemiMinor.Pixels * y;
        return new PixelPoint(
            Outer.Centre.X + (major * _cosine) - (minor * _sine),
            Outer.Centre.Y + (major * _sine) + (minor * _cosine));
    }

    /// <summary>Gives the plane point that a photo point shows: distance from the ring's centre in outer radii, and angle in (-180, 180] degrees; null beyond the plane's horizon.</summary>
    public (double Radius, Angle Around)? ToPlane(PixelPoint photoPoint)
    {
        var (x, y) = Normalise(photoPoint);
        if (1 - (_shift * ((x * _shiftX) + (y * _shiftY))) <= 0)
        {
            return null;
        }

        var (u, v) = Shift(x, y, -_shift);
        return (Math.Sqrt((u * u) + (v * v)), Angle.FromRadians(Math.Atan2(v, u)));
    }

    private (double X, double Y) Normalise(PixelPoint point)
    {
        var x = point.X - Outer.Centre.X;
        var y = point.Y - Outer.Centre.Y;
        return (((x * _cosine) + (y * _sine)) / Outer.SemiMajor.Pixels, ((y * _cosine) - (x * _sine)) / Outer.SemiMinor.Pixels);
    }

    private (double X, double Y) Shift(double x, double y, double by)
    {
        var along = (x * _shiftX) + (y * _shiftY);
        var across = (y * _shiftX) - (x * _shiftY);
        var depth = 1 + (by * along);
        var newAlong = (along + by) / depth;
        var newAcross = across * Math.Sqrt(1 - (by * by)) / depth;
        return ((newAlong * _shiftX) - (newAcross * _shiftY), (newAlong * _shiftY) + (newAcross * _shiftX));
    }
}
