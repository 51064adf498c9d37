using System;
using System.Globalization;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// What is said where the two sides run together strongly. A cylinder that runs away from the camera and a cone that lies square to it have the same two straight
/// outlines: a taper of a degrees looks like a slant whose tangent is tan(a) times the distance in radii (computed). One photo cannot tell them apart, so it is unrolled as a cylinder and said.
/// </summary>
internal static class TaperWords
{
    /// <summary>Slant from which a person would hardly photograph lettering on purpose, and the angle between the sides that is not the camera's own wobble; chosen.</summary>
    private const double SteepSlant = 30;
    private const double ClearlyTogether = 1;

    /// <summary>Gives a sentence, or null where the sides run as those of a tube that lies nearly square to the camera.</summary>
    internal static string? Of(PixelSegment first, PixelSegment second, CylinderPose pose)
    {
        var together = Math.Abs(Math.IEEERemainder(first.Direction.Degrees - second.Direction.Degrees, 180));
        var slant = Slant(pose);
        return together < ClearlyTogether || slant < SteepSlant ? null : string.Create(
            CultureInfo.InvariantCulture,
            $"The two long sides run together by {together:0.0} degrees. It was laid flat as a cylinder that runs away from the camera at {slant:0} degrees; if it lay square to the camera it is tapered by that angle instead, and the letters are less wide than shown. Photograph the tube square on to be sure.");
    }

    /// <summary>Gives the degrees by which the axis leaves the plane of the picture.</summary>
    private static double Slant(CylinderPose pose) => Math.Asin(Math.Min(1, Math.Abs(pose.AxisDirection.Z))) * 180 / Math.PI;
}
