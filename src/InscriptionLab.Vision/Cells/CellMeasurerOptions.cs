namespace InscriptionLab.Vision.Cells;

/// <summary>What the cell measurer takes for known where neither photo nor user says so. Uncertainties are standard uncertainties (k = 1).</summary>
public sealed record CellMeasurerOptions
{
    /// <summary>Gets the focal length that is assumed without EXIF data, in units of the photo's longer side.</summary>
    /// <value>Default 1.4: between a phone's main lens (about 0.75) and a close-up or cropped photo (about 2.8).</value>
    public double AssumedFocal { get; init; } = 1.4;

    /// <summary>Gets the relative uncertainty of the assumed focal length.</summary>
    /// <value>Default 0.45: the two ends named above lie 1.5 standard deviations off.</value>
    public double AssumedFocalRelative { get; init; } = 0.45;

    /// <summary>Gets the relative uncertainty of a focal length from EXIF data.</summary>
    /// <value>Default 0.05: the 35 mm equivalent is a rounded whole number and close focus lengthens it.</value>
    public double KnownFocalRelative { get; init; } = 0.05;

    /// <summary>Gets the relative uncertainty of a focal length from a calibration.</summary>
    /// <value>Default 0.01: focus moves it between the board and the cell (common practice).</value>
    public double CalibratedFocalRelative { get; init; } = 0.01;

    /// <summary>Gets the relative displacement at the photo's corner that a calibration leaves.</summary>
    /// <value>Default 0.0003: half a pixel at the corner of a photo of 12 megapixels.</value>
    public double CalibratedDistortionRelative { get; init; } = 0.0003;

    /// <summary>Gets the uncertainty of the rim's height above the scale where the user says nothing, in millimetres. The scale is then taken to lie level with the rim.</summary>
    /// <value>Default 6.5: a card on the table lies as much below the rim as the cell is high, up to about 13 mm (common practice), and that is two standard deviations.</value>
    public double UnknownOffsetMillimetres { get; init; } = 6.5;

    /// <summary>Gets the uncertainty of a height that the user gives (nought for level), in millimetres.</summary>
    /// <value>Default 0.25: a height read from a rule, or a level judged by a straight edge, to half a millimetre.</value>
    public double KnownOffsetMillimetres { get; init; } = 0.25;

    /// <summary>Gets the uncertainty of an inner circle's centre beside the axis along each direction, in millimetres.</summary>
    /// <value>Default 0.1: turned in one setting, a part runs truer; a loose stop less so (common practice).</value>
    public double ConcentricityMillimetres { get; init; } = 0.1;

    /// <summary>Gets the uncertainty of the clear aperture's depth below the rim, in millimetres.</summary>
    /// <value>Default 0.15: a broken or bevelled edge (common practice).</value>
    public double ClearDepthMillimetres { get; init; } = 0.15;

    /// <summary>Gets the assumed depth of the stop below the rim, in millimetres.</summary>
    /// <value>Default 2.5 (common practice: behind the seat of a lens 2 to 5 mm thick).</value>
    public double StopDepthMillimetres { get; init; } = 2.5;

    /// <summary>Gets its uncertainty, in millimetres.</summary>
    /// <value>Default 1.5.</value>
    public double StopDepthUncertaintyMillimetres { get; init; } = 1.5;

    /// <summary>Gets the uncertainty of where the middle of a blurred edge lies, in pixels, the same all round.</summary>
    /// <value>Default 0.12: tone curve, sharpening and glare move an edge by about a tenth of a pixel (seen on coded squares of known size).</value>
    public double EdgePlacePixels { get; init; } = 0.12;

    /// <summary>Gets the further uncertainty where an edge runs beside burnt-out light, in pixels.</summary>
    /// <value>Default 0.7: light that is cut off at white moves the middle of an edge by about the blur.</value>
    public double BurntEdgePixels { get; init; } = 0.7;

    /// <summary>Gets how far a circle's edge may be seen out of round (second wave), in pixels.</summary>
    /// <value>Default 0.15.</value>
    public double RoundnessPixels { get; init; } = 0.15;

    /// <summary>Gets the relative displacement by lens distortion at the photo's corner.</summary>
    /// <value>Default 0.002: what a phone's own correction leaves (common practice).</value>
    public double DistortionRelative { get; init; } = 0.002;

    /// <summary>Gets the relative uncertainty of the scale's own making.</summary>
    /// <value>Default 0.0005: half a tenth of a millimetre in a hundred (common practice for engraved rules; home prints can be worse).</value>
    public double ScaleMakingRelative { get; init; } = 0.0005;

    /// <summary>Gets the relative uncertainty of a printed card whose check line was not measured.</summary>
    /// <value>Default 0.01: printers' feed is off by up to about a per cent, and "fit to page" shrinks by some (common practice).</value>
    public double UnmeasuredPrintRelative { get; init; } = 0.01;

    /// <summary>Gets how far edges of the scale may be seen toward light, in pixels.</summary>
    /// <value>Default 0.5: of the order of the blur.</value>
    public double EdgeShiftPixels { get; init; } = 0.5;

    /// <summary>Gets how far the camera may look aside from straight above, along each direction, in radians; it matters only where scale and circles do not tell.</summary>
    /// <value>Default 0.35, 20 degrees (common practice: a photo by hand from above).</value>
    public double TiltRadians { get; init; } = 0.35;

    /// <summary>Gets the relative uncertainty of the size of an ID-1 card.</summary>
    /// <value>Default 0.0009: 85.47 to 85.72 mm by 53.92 to 54.03 mm for an unused card (ISO/IEC 7810, bounds from memory), as a rectangular distribution.</value>
    public double Id1MakingRelative { get; init; } = 0.0009;

    /// <summary>Gets the uncertainty of a disc's stated diameter, in millimetres.</summary>
    /// <value>Default 0.03: wear, and what a caliper in a careful hand leaves (common practice).</value>
    public double DiscMillimetres { get; init; } = 0.03;

    /// <summary>Gets how far a rule's long edge may be seen turned against its row of ticks, in radians.</summary>
    /// <value>Default 0.003: a tenth of a millimetre in thirty, as where the side of the rule is taken for its edge at one end (common practice).</value>
    public double LineTurnRadians { get; init; } = 0.003;

    /// <summary>Gets the factor by which readings on the scale are less independent than their number says.</summary>
    /// <value>Default 2: sharpening and JPEG blocks reach over neighbouring readings.</value>
    public double ScaleInflation { get; init; } = 2;

    /// <summary>Gets the least share of its outline along which the outer rim must be covered by edges.</summary>
    /// <value>Default 0.5: of a rim before the cell's own side the rough search covers little more; how well the edge is traced decides.</value>
    public double OuterCoverage { get; init; } = 0.5;

    /// <summary>Gets the least mean significance of an inner circle's edge, from 0 to 4.</summary>
    /// <value>Default 0.65: uneven surfaces without an edge mostly have less; tracing decides.</value>
    public double InnerStrength { get; init; } = 0.65;

    /// <summary>Gets the least quality of an inner circle's trace: share seen over scatter in pixels.</summary>
    /// <value>Default 0.45: chance alignments of texture reach about 0.4.</value>
    public double InnerQuality { get; init; } = 0.45;

    /// <summary>Gets the tilt beyond which the user is warned, in degrees.</summary>
    /// <value>Default 30: the near wall of a cell then hides a stop.</value>
    public double LargestTiltDegrees { get; init; } = 30;
}
