using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>Third-order spherical aberration of a thin single lens in air for a distant object (F. A. Jenkins, H. E. White, Fundamentals of Optics, chapter on lens aberrations).</summary>
public static class ThinLens
{
    /// <summary>Shape factor of a lens whose curved side faces the object, the other being flat.</summary>
    public const double ConvexFirst = 1;

    /// <summary>Gives K in LSA = K h² / f.</summary>
    /// <param name="index">Refractive index, above one.</param>
    /// <param name="shape">Shape factor q = (R2 + R1) / (R2 - R1).</param>
    public static double SphericalFactor(double index, double shape)
    {
        if (!(index > 1 && index < 4))
        {
            throw new ArgumentOutOfRangeException(nameof(index), index, "A glass has a refractive index between 1 and 4.");
        }

        var n = index;
        var bracket = ((n + 2) / (n - 1) * shape * shape) - (4 * (n + 1) * shape) + (((3 * n) + 2) * (n - 1)) + (n * n * n / (n - 1));
        return bracket / (8 * n * (n - 1));
    }

    /// <summary>Gives the longitudinal spherical aberration: how far before the focus of the middle the rays of a zone cross the axis.</summary>
    /// <param name="index">Refractive index.</param>
    /// <param name="shape">Shape factor.</param>
    /// <param name="focalLength">Focal length.</param>
    /// <param name="zone">Height of the zone above the axis: half the aperture for its edge.</param>
    public static Length Longitudinal(double index, double shape, Length focalLength, Length zone)
    {
        Positive.Check(focalLength, nameof(focalLength));
        Positive.Check(zone, nameof(zone));
        return zone * (SphericalFactor(index, shape) * (zone / focalLength));
    }

    /// <summary>Gives the diameter of the smallest blur of the whole aperture (circle of least confusion): half the edge ray's height at the focus of the middle. It grows with the cube of the aperture.</summary>
    public static Length LeastBlur(double index, double shape, Length focalLength, Length aperture)
    {
        var edge = aperture * 0.5;
        return Longitudinal(index, shape, focalLength, edge) * (edge / focalLength) * 0.5;
    }
}
