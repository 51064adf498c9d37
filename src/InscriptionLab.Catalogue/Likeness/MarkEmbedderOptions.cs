namespace InscriptionLab.Likeness;

/// <summary>How the picture of a line becomes an embedding.</summary>
public sealed record MarkEmbedderOptions
{
    /// <summary>Gets the height to which a line is brought, in pixels.</summary>
    /// <value>Default 48, the height at which the lines are read.</value>
    public int Height { get; init; } = 48;

    /// <summary>Gets the largest width to which a line is brought, in pixels.</summary>
    /// <value>Default 1024: a line of 40 letters; a longer one is squeezed.</value>
    public int MostWidth { get; init; } = 1024;

    /// <summary>Gets the number of stretches into which a line is cut from left to right.</summary>
    /// <value>Default 12, about one stretch for two letters of a maker's name.</value>
    public int Stretches { get; init; } = 12;

    /// <summary>Gets the number of bands into which a line is cut from top to bottom.</summary>
    /// <value>Default 4: ascenders, upper half, lower half, descenders.</value>
    public int Bands { get; init; } = 4;

    /// <summary>Gets the number of stroke directions told apart over half a turn.</summary>
    /// <value>Default 8, as in histograms of oriented gradients (Dalal and Triggs, CVPR 2005, found 9 best; 8 fills whole vectors).</value>
    public int Directions { get; init; } = 8;
}
