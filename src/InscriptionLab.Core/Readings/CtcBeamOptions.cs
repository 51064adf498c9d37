namespace InscriptionLab.Readings;

/// <summary>How wide the search for the most probable spellings looks.</summary>
public sealed record CtcBeamOptions
{
    /// <summary>Gets how many beginnings are kept after each frame.</summary>
    /// <value>Default 24: common practice is 10 to 100; the posteriors of one line rarely leave more than a handful of rivals.</value>
    public int Width { get; init; } = 24;

    /// <summary>Gets how many spellings are given back.</summary>
    /// <value>Default 8.</value>
    public int Take { get; init; } = 8;

    /// <summary>Gets the probability under which a class is not tried in a frame.</summary>
    /// <value>Default 1e-5: a thousandth of the smallest alternative that is shown (0.5 %), so that it changes none of them.</value>
    public double ClassFloor { get; init; } = 1e-5;
}
