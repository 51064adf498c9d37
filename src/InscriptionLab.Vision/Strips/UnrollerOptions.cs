using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Strips;

/// <summary>How a tube is unrolled.</summary>
public sealed record UnrollerOptions
{
    /// <summary>Gets how far round the tube the strip goes on either side of the generatrix facing the camera.</summary>
    /// <value>80 degrees: the stretch 1 / cos there is 5.8, and the silhouette itself is reached a little under 90 (computed).</value>
    public Angle HalfArc { get; init; } = Angle.FromDegrees(80);

    /// <summary>Gets how near the strip comes to the silhouette at most, as a share of the angle from facing to silhouette.</summary>
    /// <value>0.95: beyond it a silhouette that is one pixel off would show background.</value>
    public double ShareOfLimb { get; init; } = 0.95;

    /// <summary>Gets the largest strip width in pixels.</summary>
    /// <value>2400, so that a strip of a 12 megapixel photo stays quick to look through.</value>
    public int MaximumWidth { get; init; } = 2400;

    /// <summary>Gets the largest strip height in pixels.</summary>
    /// <value>1400.</value>
    public int MaximumHeight { get; init; } = 1400;

    /// <summary>Gets the smallest scale along the tube, as a share of the largest, that is still unrolled.</summary>
    /// <value>0.25: a tube that runs away from the camera is left where its letters have shrunk to a quarter.</value>
    public double SmallestShareOfScale { get; init; } = 0.25;
}
