using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>
/// The focal length where a file does not tell it. Two outlines alone do not give it, but they give the tube's width in the picture, and width, focal length and
/// distance belong together: a tube that fills the picture was either taken with a long lens or from so near that few lenses focus there. What is usual of lenses
/// and what is usual of distances are weighed by their spreads (product of two normal densities of the logarithm).
/// </summary>
public sealed record FocalGuess
{
    /// <summary>Gets the usual focal length, as a multiple of the picture's longer side.</summary>
    /// <value>
    /// 1.4: half way (geometric mean) between the 26 mm main lens of many phones (26/36 = 0.72) and a camera or a phone's second lens of 100 mm equivalent (2.8);
    /// common practice.
    /// </value>
    public double Usual { get; init; } = 1.4;

    /// <summary>Gets the standard deviation of its natural logarithm.</summary>
    /// <value>0.45, as for measured cells: the two lenses named lie 1.5 standard deviations off.</value>
    public double Spread { get; init; } = 0.45;

    /// <summary>Gets the usual distance from the lens to the axis, in radii of the tube.</summary>
    /// <value>12.5: 250 mm, the reference distance of vision (ISO 8039), from a tube 40 mm across; common practice.</value>
    public double UsualDistance { get; init; } = 12.5;

    /// <summary>Gets the standard deviation of its natural logarithm.</summary>
    /// <value>0.5: distances of 120 to 500 mm and tubes 20 to 80 mm across, each range taken for 95 %.</value>
    public double DistanceSpread { get; init; } = 0.5;

    /// <summary>Gets the standard deviation of the natural logarithm of what is guessed.</summary>
    public double GuessSpread => 1 / Math.Sqrt((1 / (Spread * Spread)) + (1 / (DistanceSpread * DistanceSpread)));

    /// <summary>Guesses the focal length from the outlines of a tube.</summary>
    /// <param name="first">One outline.</param>
    /// <param name="second">The other outline.</param>
    /// <param name="principalPoint">Principal point.</param>
    /// <param name="longerSide">Longer side of the picture in pixels, above zero.</param>
    /// <returns>The focal length, or null where the outlines bound no tube.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The side or a spread is not above zero.</exception>
    public PixelLength? Of(PixelSegment first, PixelSegment second, PixelPoint principalPoint, double longerSide)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longerSide);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Spread);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(DistanceSpread);
        var usual = PixelLength.FromPixels(Usual * longerSide);
        if (CylinderPose.FromSilhouettes(first, second, usual, focalAssumed: true, principalPoint) is not { } pose)
        {
            return null;
        }

        // Half the width over the focal length is the tangent of the limb's angle, 1 over the root of the squared distance less 1.
        var distance = pose.AxisPoint.Norm;
        var halfWidth = Usual / Math.Sqrt((distance * distance) - 1);
        var byDistance = halfWidth * Math.Sqrt((UsualDistance * UsualDistance) - 1);
        var byLens = 1 / (Spread * Spread);
        var byPlace = 1 / (DistanceSpread * DistanceSpread);
        var logarithm = ((byLens * Math.Log(Usual)) + (byPlace * Math.Log(byDistance))) / (byLens + byPlace);
        return PixelLength.FromPixels(Math.Exp(logarithm) * longerSide);
    }

    /// <summary>Gives by how much a place 45 degrees off the middle may lie elsewhere round the tube because the focal length is a guess (one standard deviation, the longer way).</summary>
    /// <param name="first">One outline.</param>
    /// <param name="second">The other outline.</param>
    /// <param name="pose">The cylinder made with the guess.</param>
    /// <returns>The angle, or null where the outlines bound no tube with another focal length.</returns>
    public Angle? Doubt(PixelSegment first, PixelSegment second, CylinderPose pose)
    {
        ArgumentNullException.ThrowIfNull(pose);
        var shorter = PixelLength.FromPixels(pose.Focal.Pixels * Math.Exp(-GuessSpread));
        if (CylinderPose.FromSilhouettes(first, second, shorter, focalAssumed: true, pose.PrincipalPoint) is not { } other)
        {
            return null;
        }

        var place = Angle.FromDegrees(45);
        var there = new CylinderProjection(other).ToSurface(new CylinderProjection(pose).ToPhoto(new SurfacePoint(0, place)));
        return there is { } found ? Angle.FromRadians(Math.Abs(Math.Abs(found.Around.Radians) - place.Radians)) : null;
    }
}
