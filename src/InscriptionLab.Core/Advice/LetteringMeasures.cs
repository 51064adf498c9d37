using System.Collections.Immutable;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Advice;

/// <summary>What was measured where the lettering lies; where nothing was read, on the part of the tube that faces the camera, or in the middle of the photo.</summary>
public sealed record LetteringMeasures
{
    /// <summary>Gets a value indicating whether letters were read, so that the figures hold for them.</summary>
    public required bool Read { get; init; }

    /// <summary>Gets the median height of the ink in the photo; null where nothing was read.</summary>
    public PixelLength? LetterHeight { get; init; }

    /// <summary>Gets the distance between the outlines at the lettering; null without a tube.</summary>
    public PixelLength? TubeDiameter { get; init; }

    /// <summary>Gets the standard deviation of the blur along the direction in which edges are sharpest.</summary>
    public PixelLength SharpBlur { get; init; }

    /// <summary>Gets the standard deviation of the blur along the direction in which edges are widest.</summary>
    public PixelLength WideBlur { get; init; }

    /// <summary>Gets the direction in the photo along which edges are widest, from the X axis toward the Y axis.</summary>
    public Angle WideDirection { get; init; }

    /// <summary>Gets how sharp the tube's outlines are, or why that could not be measured; null without a tube.</summary>
    public Outcome<OutlineSharpness>? Outlines { get; init; }

    /// <summary>Gets the share of the lettering's area that is bright and shows nothing, 0 to 1.</summary>
    public double WashedShare { get; init; }

    /// <summary>Gets the places of the lines at which the photo is burnt out over three quarters of their box or more.</summary>
    public ImmutableArray<BurntPlace> Burnt { get; init; } = [];

    /// <summary>Gets how bright the grooves of each line are beside the metal; without lines too short to tell.</summary>
    public ImmutableArray<LineTone> Tones { get; init; } = [];

    /// <summary>Gets the grey level that all but the brightest hundredth of the area stay below, 0 to 255.</summary>
    public double BrightLevel { get; init; }

    /// <summary>Gets the middle grey level of the area, 0 to 255.</summary>
    public double MiddleLevel { get; init; }

    /// <summary>Gets how far strokes stand out: the range of grey levels at the size of strokes (2nd to 98th percentile) over the ground beside them.</summary>
    public double Contrast { get; init; }

    /// <summary>Gets the strength of edges across the line's stems over that of edges across its bars; null where nothing was read.</summary>
    public double? StemsToBars { get; init; }

    /// <summary>Gets from which side the light comes, or why that was not told; null where it was not looked for.</summary>
    public Outcome<LampSight>? Light { get; init; }

    /// <summary>Gets the angle between the surface at the lettering and the line of sight: 0 faces the camera; null without a tube or lettering.</summary>
    public Angle? TurnedAway { get; init; }

    /// <summary>Gets the part of <see cref="TurnedAway"/> that lies round the tube: positive toward the lower (or right) outline.</summary>
    public Angle? Around { get; init; }

    /// <summary>Gets a value indicating whether the frame touches the lettering.</summary>
    public bool CutByFrame { get; init; }

    /// <summary>Gets the quality at which the file says it was packed, 1 to 100; null for other formats.</summary>
    public int? JpegQuality { get; init; }

    /// <summary>Gets the strength of steps at the borders of 8 x 8 blocks over that of steps elsewhere; 1 where no blocks show.</summary>
    public double Blockiness { get; init; }

    /// <summary>Gets a value indicating whether a checkerboard or marker card was seen.</summary>
    public bool ScaleSeen { get; init; }
}
