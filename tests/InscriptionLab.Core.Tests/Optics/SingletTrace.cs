using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Core.Tests.Optics;

/// <summary>Exact rays through a single thick lens with spherical sides, parallel to its axis on the object's side. Lengths in millimetres.</summary>
/// <param name="Index">Refractive index.</param>
/// <param name="FirstRadius">Radius of the first side, positive where it bulges towards the object; infinite where flat.</param>
/// <param name="SecondRadius">Radius of the second side, in the same sense.</param>
/// <param name="Thickness">Thickness at the middle.</param>
internal sealed record SingletTrace(double Index, double FirstRadius, double SecondRadius, double Thickness)
{
    /// <summary>Height of a ray that stands for the middle of the lens, in millimetres.</summary>
    private const double Paraxial = 1e-4;

    /// <summary>Gives where a ray at a height crosses the axis, behind the second side's vertex.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ray misses the lens or is thrown back inside it.</exception>
    internal Length FocusBehindLens(Length height)
    {
        var (z, y, slope) = Refract(0, height.Millimetres, 0, FirstRadius, 0, 1, Index);
        (z, y, slope) = Refract(z, y, slope, SecondRadius, Thickness, Index, 1);
        return Length.FromMillimetres(z - (y / slope) - Thickness);
    }

    /// <summary>Gives the longitudinal spherical aberration of a zone: the middle's focus less the zone's.</summary>
    internal Length Longitudinal(Length height) => FocusBehindLens(Length.FromMillimetres(Paraxial)) - FocusBehindLens(height);

    private static (double Z, double Y, double Slope) Refract(double z, double y, double slope, double radius, double vertex, double before, double after)
    {
        var (hitZ, hitY, normalAngle) = double.IsInfinity(radius) ? (vertex, y + (slope * (vertex - z)), 0.0) : OnSphere(z, y, slope, radius, vertex);
        var incidence = Math.Atan(slope) - normalAngle;
        var sine = before / after * Math.Sin(incidence);
        return Math.Abs(sine) <= 1
            ? (hitZ, hitY, Math.Tan(normalAngle + Math.Asin(sine)))
            : throw new ArgumentOutOfRangeException(nameof(y), y, "The ray is thrown back inside the lens.");
    }

    private static (double Z, double Y, double NormalAngle) OnSphere(double z, double y, double slope, double radius, double vertex)
    {
        var centre = vertex + radius;
        var (dz, dy) = (1 / Math.Sqrt(1 + (slope * slope)), slope / Math.Sqrt(1 + (slope * slope)));
        var (oz, oy) = (z - centre, y);
        var along = -((oz * dz) + (oy * dy));
        var distance = (oz * oz) + (oy * oy) - (along * along);
        var inside = (radius * radius) - distance;
        if (inside < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(y), y, "The ray misses the lens.");
        }

        var t = along - (Math.Sign(radius) * Math.Sqrt(inside));
        var (hitZ, hitY) = (z + (t * dz), y + (t * dy));

        // The outward normal of the side that faces the object, as an angle against the axis.
        return (hitZ, hitY, -Math.Asin(hitY / radius));
    }
}
