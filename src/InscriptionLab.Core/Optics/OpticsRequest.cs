using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>What is known of a telescope; null where it is not.</summary>
public sealed record OpticsRequest
{
    /// <summary>Gets the clear aperture of the objective.</summary>
    public required Length Objective { get; init; }

    /// <summary>Gets the aperture stop's diameter.</summary>
    public Length? Stop { get; init; }

    /// <summary>Gets a value indicating whether the stop was measured through the objective, so that its diameter is that of its image.</summary>
    public bool StopSeenThroughGlass { get; init; }

    /// <summary>Gets the stop's distance behind the objective.</summary>
    public Length? StopDistance { get; init; }

    /// <summary>Gets the focal length of the objective.</summary>
    public Length? FocalLength { get; init; }

    /// <summary>Gets the focal length of the eyepiece, erector and all.</summary>
    public Length? EyepieceFocalLength { get; init; }

    /// <summary>Gets the exit pupil diameter as measured.</summary>
    public Length? ExitPupil { get; init; }

    /// <summary>Gets the angular magnification as known otherwise.</summary>
    public double? Magnification { get; init; }

    /// <summary>Gets the refractive index of a single objective lens.</summary>
    public double? Index { get; init; }

    /// <summary>Gets the Abbe numbers of an achromatic objective's two glasses.</summary>
    public (double First, double Second)? AbbeNumbers { get; init; }
}
