using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Rings;

/// <summary>How the flat ring of a lens cell is unrolled.</summary>
public sealed record RingUnrollerOptions
{
    /// <summary>Gets how far the strip goes on past a full turn, so that a line which the first column cuts shows whole at the end.</summary>
    /// <value>90 degrees: a maker's name on a cell seldom takes more than a quarter of the ring (common practice; longer lines show in two pieces).</value>
    public Angle Overlap { get; init; } = Angle.FromDegrees(90);

    /// <summary>Gets the angle at which the strip starts, clockwise as seen, from the longer axis of the outer ellipse.</summary>
    /// <value>0 degrees.</value>
    public Angle Start { get; init; }

    /// <summary>Gets the largest strip width in pixels.</summary>
    /// <value>4800: twice the widest tube strip, since a ring goes all the way round.</value>
    public int MaximumWidth { get; init; } = 4800;
}
