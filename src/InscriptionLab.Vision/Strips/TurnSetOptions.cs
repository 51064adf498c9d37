using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Strips;

/// <summary>How photos of a turned tube are put together. Where no other source is named, the value was chosen on rendered sets with known turns.</summary>
public sealed record TurnSetOptions
{
    /// <summary>Gets the strip pixels per radius in which photos are compared.</summary>
    /// <value>110: scratches and letters of a tenth of a radius are then eleven pixels high.</value>
    public double ComparingScale { get; init; } = 110;

    /// <summary>Gets how far from the generatrix facing the camera a photo is compared and used.</summary>
    /// <value>65 degrees: beyond it letters are squeezed to less than 0.42 of their width (1 / cos, computed).</value>
    public Angle HalfArc { get; init; } = Angle.FromDegrees(65);

    /// <summary>Gets the largest axial shift between neighbouring photos, in radii.</summary>
    /// <value>1.5.</value>
    public double LargestAxialShift { get; init; } = 1.5;

    /// <summary>Gets the smallest overlap of two photos round the tube.</summary>
    /// <value>20 degrees.</value>
    public Angle SmallestOverlap { get; init; } = Angle.FromDegrees(20);

    /// <summary>Gets the correlation of details below which two photos are not taken to overlap.</summary>
    /// <value>0.2; wrong places of rendered sets reach 0.12.</value>
    public double SmallestAgreement { get; init; } = 0.2;

    /// <summary>Gets the largest remainder of a full turn that is spread over the steps; above it the circle is not closed.</summary>
    /// <value>12 degrees.</value>
    public Angle LargestClosure { get; init; } = Angle.FromDegrees(12);

    /// <summary>Gets how far the strip goes on past a full turn, so that no line is cut.</summary>
    /// <value>60 degrees.</value>
    public Angle Overlap { get; init; } = Angle.FromDegrees(60);

    /// <summary>Gets the largest side of the strip in pixels.</summary>
    /// <value>4800.</value>
    public int MaximumSide { get; init; } = 4800;
}
