namespace InscriptionLab.Vision.Rings;

/// <summary>When something round counts as the flat face of a ring.</summary>
public sealed record RingFinderOptions
{
    /// <summary>Gets the share of a rim's outline along which edges must lie for it to be looked at.</summary>
    /// <value>0.5, as cells are measured.</value>
    public double RimCoverage { get; init; } = 0.5;

    /// <summary>Gets the smallest longer semi-axis of the rim, as a share of the photo's shorter side.</summary>
    /// <value>0.12: letters a twelfth of the radius high would have 10 pixels in a photo of 1000.</value>
    public double SmallestRim { get; init; } = 0.12;

    /// <summary>Gets the smallest opening, as a share of the rim: what lies farther in is no face of a ring.</summary>
    /// <value>0.4 (common practice: a cell's face takes up less than half of its radius).</value>
    public double SmallestOpening { get; init; } = 0.4;

    /// <summary>Gets the largest opening, as a share of the rim: a narrower face has no room for letters.</summary>
    /// <value>0.92.</value>
    public double LargestOpening { get; init; } = 0.92;

    /// <summary>Gets how far down a face without an opening is looked at, as a share of the rim.</summary>
    /// <value>0.45: lettering round a cap follows its rim (common practice).</value>
    public double ClosedFace { get; init; } = 0.45;

    /// <summary>Gets the least quality of an opening's trace, as a share of the best one's.</summary>
    /// <value>0.5: rows of letters make circles too, but rough ones.</value>
    public double OpeningQuality { get; init; } = 0.5;
}
