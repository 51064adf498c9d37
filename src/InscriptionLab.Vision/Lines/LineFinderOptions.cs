using System.Collections.Immutable;

namespace InscriptionLab.Vision.Lines;

/// <summary>How lines are looked for in a strip.</summary>
public sealed record LineFinderOptions
{
    /// <summary>Gets the scales at which the strip is looked through: the whole at the coarsest, and what that look hints at in the others.</summary>
    /// <value>Default full and half: the detector learned letters with an x of 5 to 58 px, and strips carry up to twice that.</value>
    public ImmutableArray<double> Scales { get; init; } = [1.0, 0.5];

    /// <summary>Gets the largest side, in pixels, that is looked through at once; a larger strip is shrunk further.</summary>
    /// <value>Default 2432, a little above the largest strip.</value>
    public int MaximumSide { get; init; } = 2432;

    /// <summary>Gets the largest side of a strip that goes round a ring: long, but low.</summary>
    /// <value>Default 4800, the longest such strip.</value>
    public int MaximumBentSide { get; init; } = 4800;

    /// <summary>Gets the probability at which a cell of the coarsest look hints at lettering.</summary>
    /// <value>Default 0.03: on 24 rendered tubes as many letters were wrong as with a look at the whole (36 of 454, tried with an earlier state of the detector); at 0.1 letters of a turned set were lost.</value>
    public double HintThreshold { get; init; } = 0.03;

    /// <summary>Gets what a line traced in the coarsest look counts beside the same line traced more closely.</summary>
    /// <value>Default 0.85: its ends and its middle line are half as exact, and it comes out about 7 % larger.</value>
    public double CoarseTrust { get; init; } = 0.85;

    /// <summary>Gets how much around a hint is looked at more closely, in pixels of the closer look.</summary>
    /// <value>Default 64: a line of the tallest letters seen there, and what the network uses around it.</value>
    public int HintSurroundings { get; init; } = 64;

    /// <summary>Gets the probability at which a cell counts as lettering.</summary>
    /// <value>Default 0.5.</value>
    public double CoreThreshold { get; init; } = 0.5;

    /// <summary>Gets the cosine above which neighbouring cells may belong to one line.</summary>
    /// <value>Default 0.8: 37 degrees.</value>
    public double DirectionAgreement { get; init; } = 0.8;

    /// <summary>Gets the fewest cells of a line.</summary>
    /// <value>Default 4: a single letter 20 px high has about 6.</value>
    public int FewestCells { get; init; } = 4;

    /// <summary>Gets the smallest mean probability of a line's cells.</summary>
    /// <value>Default 0.6.</value>
    public double SmallestScore { get; init; } = 0.6;

    /// <summary>Gets the shortest line as a share of its height.</summary>
    /// <value>Default 0.35: a lone I.</value>
    public double ShortestLine { get; init; } = 0.35;

    /// <summary>Gets the widest gap, in ink heights, across which pieces on one line are joined.</summary>
    /// <value>Default 1.5: wider than a word space, narrower than the way to a separate inscription.</value>
    public double WidestGap { get; init; } = 1.5;

    /// <summary>Gets how far apart, in ink heights, the middle lines of pieces of one line may lie.</summary>
    /// <value>Default 0.3.</value>
    public double LargestStep { get; init; } = 0.3;

    /// <summary>Gets how much the heights of pieces of one line may differ, as a ratio.</summary>
    /// <value>Default 1.7: a word without tall letters beside one with ascenders and descenders.</value>
    public double LargestHeightRatio { get; init; } = 1.7;

    /// <summary>Gets the share of the shorter of two lines that may lie inside the other before the less sure one is dropped.</summary>
    /// <value>Default 0.35.</value>
    public double LargestOverlap { get; init; } = 0.35;

    /// <summary>Gets the smallest height of a line from ink top to ink bottom, in strip pixels.</summary>
    /// <value>Default 4: below it no letter has enough pixels to be told from another.</value>
    public double SmallestInkHeight { get; init; } = 4;
}
