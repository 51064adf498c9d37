using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>The measured circles of one lens cell.</summary>
/// <param name="Scale">The scale that was used.</param>
/// <param name="Circles">Circles in the order outer, clear, stop; those not seen are missing and named in the warnings.</param>
/// <param name="PlaneOffset">Height of the rim above the scale's plane that was used, with its uncertainty.</param>
/// <param name="Tilt">Angle between the camera's axis and the normal of the rim's plane.</param>
/// <param name="CameraDistance">Distance from the camera's centre to the rim, with its uncertainty.</param>
/// <param name="Warnings">Plain sentences: what was assumed, what was not seen, what makes the result less sure.</param>
public sealed record CellMeasurement(
    ScaleFound Scale,
    ImmutableArray<CellCircle> Circles,
    Measured PlaneOffset,
    Angle Tilt,
    Measured CameraDistance,
    ImmutableArray<string> Warnings)
{
    /// <summary>Gets circles that were seen and given no role, the largest first.</summary>
    public ImmutableArray<OtherCircle> Others { get; init; } = [];
}
