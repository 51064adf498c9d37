using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Turns;

/// <summary>How photos of a turned tube are put together. Where no other source is named, the value was chosen on rendered sets with known turns.</summary>
public sealed record TurnSetOptions
{
    /// <summary>Gets the strip pixels per radius in which photos are compared.</summary>
    /// <value>80: scratches and letters of a tenth of a radius are then eight pixels high.</value>
    public double ComparingScale { get; init; } = 80;

    /// <summary>Gets how far from the generatrix facing the camera a photo is compared and used.</summary>
    /// <value>65 degrees: beyond it letters are squeezed to less than 0.42 of their width (1 / cos, computed).</value>
    public Angle HalfArc { get; init; } = Angle.FromDegrees(65);

    /// <summary>Gets the usual axial shift between two photos of a tube that lay on one rest before one camera, in radii: one standard deviation.</summary>
    /// <value>0.06: a millimetre on a tube of 33; lettering of one line that fits another by chance lies anywhere.</value>
    public double UsualAxialShiftOnRest { get; init; } = 0.06;

    /// <summary>Gets the largest axial shift between neighbouring photos, in radii.</summary>
    /// <value>1.5: a camera held in the hand looks at another place of the tube each time.</value>
    public double LargestAxialShift { get; init; } = 1.5;

    /// <summary>Gets the smallest overlap of two photos round the tube.</summary>
    /// <value>20 degrees.</value>
    public Angle SmallestOverlap { get; init; } = Angle.FromDegrees(20);

    /// <summary>Gets the correlation of details below which two photos are not taken to overlap.</summary>
    /// <value>0.05: with shadows and reflections taken out, photos of a rendered plain tube with six lines of lettering reach 0.10 to 0.16.</value>
    public double SmallestAgreement { get; init; } = 0.05;

    /// <summary>Gets the same for two photos alone, whose fit no third photo confirms and whose shadows cannot be taken out.</summary>
    /// <value>0.2; wrong places of rendered pairs reach 0.12.</value>
    public double SmallestAgreementOfTwo { get; init; } = 0.2;

    /// <summary>Gets how far a fit must stand out, in standard deviations of the correlations at all shifts.</summary>
    /// <value>5: on the rendered set of eight right fits of neighbours reach 5.4 to 12.9; the three wrong ones above it, up to 5.6, are overruled by clearer ones.</value>
    public double SmallestClearness { get; init; } = 5;

    /// <summary>Gets the misfit, in radii, above which a part of a photo was fitted to something else.</summary>
    /// <value>0.15.</value>
    public double LargestMisfit { get; init; } = 0.15;

    /// <summary>Gets how far the fit of a pair may be off the turn that the clearest fits give; fits farther off are set aside, and above it the circle is not closed.</summary>
    /// <value>12 degrees.</value>
    public Angle LargestClosure { get; init; } = Angle.FromDegrees(12);

    /// <summary>Gets how far the strip goes on past a full turn, so that no line is cut.</summary>
    /// <value>60 degrees.</value>
    public Angle Overlap { get; init; } = Angle.FromDegrees(60);

    /// <summary>Gets the largest side of the strip in pixels.</summary>
    /// <value>4800.</value>
    public int MaximumSide { get; init; } = 4800;
}
