namespace InscriptionLab.Cells.Fitting;

/// <summary>What is taken for known, and how well, before the photo is read. Uncertainties are standard uncertainties.</summary>
public sealed record ScenePriors
{
    /// <summary>Gets the focal length in pixels.</summary>
    public required double Focal { get; init; }

    /// <summary>Gets the relative uncertainty of the focal length (of its logarithm).</summary>
    public required double FocalRelative { get; init; }

    /// <summary>Gets the height of the rim above the scale's plane in millimetres.</summary>
    public required double RimHeight { get; init; }

    /// <summary>Gets its uncertainty in millimetres.</summary>
    public required double RimHeightUncertainty { get; init; }

    /// <summary>Gets the uncertainty of an inner circle's centre beside the axis, along each direction, in millimetres.</summary>
    public required double ConcentricityUncertainty { get; init; }

    /// <summary>Gets the uncertainty of the clear aperture's depth below the rim, about zero, in millimetres.</summary>
    public required double ClearDepthUncertainty { get; init; }

    /// <summary>Gets the depth of the stop below the rim in millimetres.</summary>
    public required double StopDepth { get; init; }

    /// <summary>Gets its uncertainty in millimetres.</summary>
    public required double StopDepthUncertainty { get; init; }

    /// <summary>Gets how far edges of the scale may be seen toward light, in pixels: of the order of the blur.</summary>
    public required double EdgeShiftUncertainty { get; init; }

    /// <summary>Gets how far the camera may look aside from the normal of the scale's plane, along each direction, in radians.</summary>
    public required double TiltUncertainty { get; init; }

    /// <summary>Gets how far a rule's long edge may be seen turned against its row of ticks, in radians: by making, or because the edge of its side is taken for it at one end.</summary>
    public required double LineTurnUncertainty { get; init; }

    /// <summary>Gets the relative displacement by lens distortion at the picture's corner.</summary>
    public required double DistortionUncertainty { get; init; }

    /// <summary>Gets how far a circle's edge may be seen out of round (second wave), in pixels: by making, light and shade.</summary>
    public required double RoundnessPixels { get; init; }

    /// <summary>Gets how much farther an edge may be bent where all of it runs beside burnt-out light, in pixels.</summary>
    public required double BurntEdgePixels { get; init; }

    /// <summary>Gets the factor by which readings on the scale are less independent than their number says.</summary>
    public required double ScaleInflation { get; init; }

    /// <summary>Gives depth and its uncertainty for a circle.</summary>
    internal (double Depth, double Uncertainty) DepthOf(CircleRole role)
    {
        // The outer rim is the plane from which depths are counted; an uncertainty of exactly zero cannot be weighed.
        const double Fixed = 1e-6;
        return role switch
        {
            CircleRole.Outer => (0, Fixed),
            CircleRole.Clear => (0, ClearDepthUncertainty),
            _ => (StopDepth, StopDepthUncertainty),
        };
    }
}
