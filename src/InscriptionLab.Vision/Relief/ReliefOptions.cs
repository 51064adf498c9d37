using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Relief;

/// <summary>How the form of a surface is worked out from photos under several lamps. Sizes are shares of the tube's diameter.</summary>
public sealed record ReliefOptions
{
    /// <summary>Gets how far along the tube the light on bare metal is averaged.</summary>
    /// <value>0.25: the length of three to six letters; light changes slowly along a tube (a choice).</value>
    public double GroundAlong { get; init; } = 0.25;

    /// <summary>Gets how far round the tube the light on bare metal is averaged.</summary>
    /// <value>0.06: about a letter's height, since light changes quickly round a tube (a choice).</value>
    public double GroundAround { get; init; } = 0.06;

    /// <summary>Gets the length of the longest waves that heights keep.</summary>
    /// <value>0.15: a letter or two; slower waves of integrated slopes are mostly error (common practice).</value>
    public double LongestWave { get; init; } = 0.15;

    /// <summary>Gets the level from which a pixel counts as burnt out.</summary>
    /// <value>250 of 255.</value>
    public int BurntFrom { get; init; } = 250;

    /// <summary>Gets the least cosine between lamp and bare metal at which a row of the strip counts as lit.</summary>
    /// <value>0.12: 83 degrees; past it noise decides.</value>
    public double LeastLit { get; init; } = 0.12;

    /// <summary>Gets the height of a raking lamp over the metal, taken where neither user nor shading tells it.</summary>
    /// <value>20 degrees (common practice of raking light is 10 to 30).</value>
    public Angle UsualHeight { get; init; } = Angle.FromDegrees(20);

    /// <summary>Gets how much lamps must differ across their main direction, as a share of how much they differ along it, for full normals.</summary>
    /// <value>0.25.</value>
    public double LeastSpread { get; init; } = 0.25;

    /// <summary>Gets how much of what changes from photo to photo slopes in one direction must explain where the lamps were told by the shading.</summary>
    /// <value>0.5: lamps that are wrong explain little.</value>
    public double LeastExplained { get; init; } = 0.5;

    /// <summary>Gets how much lamps must differ at all, in tangents of the angle to the metal's normal.</summary>
    /// <value>0.15: about 8 degrees for a lamp that stands square.</value>
    public double LeastDifference { get; init; } = 0.15;
}
