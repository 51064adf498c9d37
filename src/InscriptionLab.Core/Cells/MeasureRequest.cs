using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>What the user says beside the photo of a cell; null where the user says nothing.</summary>
/// <param name="Scale">Kind and size of the scale; null to look for every kind (only a rule's 1 mm ticks may then be assumed).</param>
/// <param name="PlaneOffset">Height of the cell's rim above the plane of the scale, negative where the rim lies lower; null where unknown.</param>
public sealed record MeasureRequest(ScaleRequest? Scale, Length? PlaneOffset)
{
    /// <summary>Gets the request of a user who says nothing.</summary>
    public static MeasureRequest Nothing { get; } = new(null, null);

    /// <summary>Gets the greatest height of a rim above or below a scale that is believed: beyond it a scale lies on another table.</summary>
    public static Length LargestPlaneOffset { get; } = Length.FromMillimetres(300);

    /// <summary>Gets a value indicating whether the photo was straightened by a calibration of its camera.</summary>
    public bool CameraCalibrated { get; init; }
}
