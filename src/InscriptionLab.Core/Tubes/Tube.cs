using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>One draw tube as it lies in the photo. Coordinates are pixels of the upright photo.</summary>
/// <param name="Axis">Image of the tube's axis over the visible length.</param>
/// <param name="Silhouettes">The two outlines of the tube, the upper (or left) one first, each over the visible length.</param>
/// <param name="Diameter">Distance between the silhouettes, square to the axis, at the middle of the visible length.</param>
/// <param name="Pose">The cylinder in front of the camera that has these outlines.</param>
/// <param name="Confidence">How well edges support both silhouettes, 0 to 1.</param>
/// <param name="Notes">Sentences for the user: what was assumed (focal length) or is uncertain (an outline out of frame).</param>
public sealed record Tube(
    PixelSegment Axis,
    ImmutableArray<PixelSegment> Silhouettes,
    PixelLength Diameter,
    CylinderPose Pose,
    Probability Confidence,
    ImmutableArray<string> Notes);
