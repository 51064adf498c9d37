using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>Figures of a telescopic system. Terms after ISO 14132 and ISO 14490-1: angular magnification, entrance pupil diameter, exit pupil diameter.</summary>
public static class Telescope
{
    /// <summary>Gives the angular magnification from the focal lengths of objective and eyepiece (with its erector, as one).</summary>
    public static double MagnificationOfFocalLengths(Length objective, Length eyepiece)
    {
        Positive.Check(objective, nameof(objective));
        Positive.Check(eyepiece, nameof(eyepiece));
        return objective / eyepiece;
    }

    /// <summary>Gives the angular magnification from the pupils (ISO 14490-1: entrance over exit pupil diameter).</summary>
    public static double MagnificationOfPupils(Length entrancePupil, Length exitPupil)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        Positive.Check(exitPupil, nameof(exitPupil));
        return entrancePupil / exitPupil;
    }

    /// <summary>Gives the exit pupil diameter.</summary>
    public static Length ExitPupil(Length entrancePupil, double magnification)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        Positive.Check(magnification, nameof(magnification));
        return entrancePupil * (1 / magnification);
    }

    /// <summary>Gives the twilight number: the root of magnification times entrance pupil in millimetres. A makers' figure; it says nothing of the glass.</summary>
    public static double TwilightNumber(Length entrancePupil, double magnification)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        Positive.Check(magnification, nameof(magnification));
        return Math.Sqrt(magnification * entrancePupil.Millimetres);
    }

    /// <summary>Gives the relative brightness: the square of the exit pupil diameter in millimetres.</summary>
    public static double RelativeBrightness(Length entrancePupil, double magnification)
    {
        var exit = ExitPupil(entrancePupil, magnification).Millimetres;
        return exit * exit;
    }

    /// <summary>Gives the f-number: focal length over entrance pupil diameter.</summary>
    public static double FNumber(Length focalLength, Length entrancePupil)
    {
        Positive.Check(focalLength, nameof(focalLength));
        Positive.Check(entrancePupil, nameof(entrancePupil));
        return focalLength / entrancePupil;
    }

    /// <summary>Gives how often more light enters than into the bare eye, for a point of light whose whole beam the eye takes in.</summary>
    public static double LightGrasp(Length entrancePupil, Length eyePupil)
    {
        Positive.Check(entrancePupil, nameof(entrancePupil));
        Positive.Check(eyePupil, nameof(eyePupil));
        var ratio = entrancePupil / eyePupil;
        return ratio * ratio;
    }

    /// <summary>Gives how bright a surface appears beside what the bare eye sees of it, glass losses aside: at most one, less where the exit pupil does not fill the eye's.</summary>
    public static double SurfaceBrightness(Length exitPupil, Length eyePupil)
    {
        Positive.Check(exitPupil, nameof(exitPupil));
        Positive.Check(eyePupil, nameof(eyePupil));
        var ratio = Math.Min(1, exitPupil / eyePupil);
        return ratio * ratio;
    }
}
