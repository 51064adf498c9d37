namespace InscriptionLab.Measures;

/// <summary>A straight piece between two points of a picture. The default value is a segment of no length at the top-left pixel.</summary>
/// <param name="Start">First end.</param>
/// <param name="End">Second end.</param>
public readonly record struct PixelSegment(PixelPoint Start, PixelPoint End)
{
    /// <summary>Gets the length of the segment.</summary>
    public PixelLength Length => Start.DistanceTo(End);

    /// <summary>Gets the direction from start to end, from the X axis toward the Y axis (clockwise as seen).</summary>
    public Angle Direction => Angle.FromRadians(System.Math.Atan2(End.Y - Start.Y, End.X - Start.X));
}
