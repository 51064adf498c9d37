using InscriptionLab.Measures;

namespace InscriptionLab.Advice;

/// <summary>Where a photo begins to be limited. Limits without a source were set on the sample photos, untouched and spoilt on purpose.</summary>
public sealed record AdviserOptions
{
    /// <summary>Gets the ink height that letters should have.</summary>
    /// <value>Default 16 pixels: below it strokes of an ordinary letter, a seventh of its height, get about two pixels, the least that sampling can show (Shannon 1949).</value>
    public PixelLength LetterHeight { get; init; } = PixelLength.FromPixels(16);

    /// <summary>Gets the height of a letter as a share of the tube's diameter, taken where nothing was read.</summary>
    /// <value>Default 1/18: letters of 1.5 to 2.5 mm on tubes of 30 to 45 mm (common practice).</value>
    public double LetterOfDiameter { get; init; } = 1 / 18.0;

    /// <summary>Gets the width of blur, at half its height, as a share of the letters' height.</summary>
    /// <value>Default 1/8: a blur as wide as a stem joins neighbouring strokes.</value>
    public double BlurOfLetter { get; init; } = 1 / 8.0;

    /// <summary>Gets the width of blur, at half its height, that never counts.</summary>
    /// <value>Default 2.6 pixels: what lens, sensor and JPEG of the untouched samples come to.</value>
    public PixelLength OrdinaryBlur { get; init; } = PixelLength.FromPixels(2.6);

    /// <summary>Gets the width of edges along a movement, at half its height, as a share of the letters' height.</summary>
    /// <value>Default 1/12: a movement hides the strokes square to it before it fills a stem.</value>
    public double MotionOfLetter { get; init; } = 1 / 12.0;

    /// <summary>Gets the width of edges along a movement that never counts.</summary>
    public PixelLength OrdinaryMotion { get; init; } = PixelLength.FromPixels(2.2);

    /// <summary>Gets how much wider edges must be in one direction than square to it to count as moved.</summary>
    public double Elongation { get; init; } = 1.25;

    /// <summary>Gets the share of the lettering that may be washed out.</summary>
    public double Washed { get; init; } = 0.08;

    /// <summary>Gets the share of the lettering from which on all of it counts as washed out.</summary>
    public double WashedAll { get; init; } = 0.6;

    /// <summary>Gets the middle grey level from which on two thirds of <see cref="WashedAll"/> are enough.</summary>
    /// <value>Default 253: half of the area is burnt out.</value>
    public double WashedLevel { get; init; } = 253;

    /// <summary>Gets the grey level that the brightest hundredth should reach.</summary>
    /// <value>Default 90: with less, a phone's noise is as large as the grooves' contrast; dark metal still has highlights.</value>
    public double BrightLevel { get; init; } = 90;

    /// <summary>Gets the contrast that strokes should have.</summary>
    /// <value>Default 0.14: seven samples and six drawn words under a good lamp have 0.17 and more, flattened on purpose 0.11 and less.</value>
    public double Contrast { get; init; } = 0.14;

    /// <summary>Gets how much stronger stems show than bars in lettering that is lit evenly: letters have more stems than bars.</summary>
    /// <value>Default 1.18, the geometric middle of the 0.85 to 1.65 of the samples' upright letters.</value>
    public double OrdinaryBalance { get; init; } = 1.18;

    /// <summary>Gets how many times stronger or weaker than <see cref="OrdinaryBalance"/> stems may show beside bars.</summary>
    /// <value>Default 1.8: drawn words under a lamp in line with their stems or bars are at 1.9 and more, well lit tubes at 1.7 and less.</value>
    public double StrokeBalance { get; init; } = 1.8;

    /// <summary>Gets the same for strokes on which the light is seen to run along them: two witnesses for one thing.</summary>
    /// <value>Default 1.35, a choice: between a well lit line of the samples and the limit for strokes alone.</value>
    public double LitStrokeBalance { get; init; } = 1.35;

    /// <summary>Gets how far the light's side may lie from square to the line, or from the line, to count as running along its stems or bars.</summary>
    /// <value>Default 25 degrees: a stroke that the light crosses at less shows less than half its contrast (sine 25 = 0.42, computed).</value>
    public Angle AlongStrokes { get; init; } = Angle.FromDegrees(25);

    /// <summary>Gets the largest standard uncertainty at which the light's side counts as a witness for that.</summary>
    /// <value>Default 35 degrees, a choice: with more, the lamp may as well stand across the strokes.</value>
    public Angle LampUncertainty { get; init; } = Angle.FromDegrees(35);

    /// <summary>Gets how far lettering may be turned away.</summary>
    /// <value>Default 50 degrees: letters shrink to cos 50 = 0.64 (computed).</value>
    public Angle TurnedAway { get; init; } = Angle.FromDegrees(50);

    /// <summary>Gets the lowest quality of a JPEG file on the scale of the Independent JPEG Group.</summary>
    /// <value>Default 40: the tables of ITU-T T.81 Annex K stand for 50.</value>
    public int JpegQuality { get; init; } = 40;

    /// <summary>Gets the strength of block borders over other steps.</summary>
    public double Blockiness { get; init; } = 1.42;
}
