using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>How near two points of light may stand and still be told apart, by the width of the beam alone: a limit that a poor glass never reaches.</summary>
public static class Resolution
{
    /// <summary>Dawes's constant in seconds of arc times millimetres (4.56 seconds of arc times inches; W. R. Dawes, 1867).</summary>
    private const double DawesSecondsMillimetres = 116;

    /// <summary>First zero of the diffraction pattern of a round opening, in wavelengths over its diameter (J1(x) = 0 at x = 3.8317, over pi).</summary>
    private const double FirstZero = 1.21967;
    private const double SecondsPerRadian = 180 * 3600 / Math.PI;

    /// <summary>Gives Dawes's limit: two equal stars just seen as two.</summary>
    public static Angle Dawes(Length entrancePupil)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        return Angle.FromRadians(DawesSecondsMillimetres / entrancePupil.Millimetres / SecondsPerRadian);
    }

    /// <summary>Gives Rayleigh's limit: the middle of one pattern on the first dark ring of the other.</summary>
    /// <param name="entrancePupil">Entrance pupil diameter.</param>
    /// <param name="wavelength">Wavelength of the light, for example 550 nm: 0.00055 mm.</param>
    public static Angle Rayleigh(Length entrancePupil, Length wavelength)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        Positive.Check(wavelength, nameof(wavelength));
        return Angle.FromRadians(FirstZero * (wavelength / entrancePupil));
    }

    /// <summary>Gives an angle in seconds of arc.</summary>
    public static double Seconds(Angle angle) => angle.Radians * SecondsPerRadian;
}
