using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Advice;

/// <summary>Turns measures into advice: what is beyond its limit, the worst first, each with steps to a better photo. What follows from a worse cause is left out.</summary>
public sealed class Adviser
{
    /// <summary>Width of a Gaussian at half its height over its standard deviation: 2 sqrt(2 ln 2).</summary>
    private const double HalfWidth = 2.3548;

    private const string BlurSource = "edge width by blurring once more (Zhuo and Sim, Pattern Recognition 44, 2011, 1852-1858)";

    private readonly AdviserOptions _options;

    /// <summary>Makes an adviser.</summary>
    /// <param name="options">Where limits begin; null for the defaults.</param>
    public Adviser(AdviserOptions? options = null) => _options = options ?? new AdviserOptions();

    /// <summary>Gets what not to do for a better photo.</summary>
    public static ImmutableArray<string> Cautions { get; } =
    [
        "Do not polish, wet, chalk or fill the lettering for a photo: move the lamp instead.",
        "Do not force a tube that does not turn by itself: walk round it with the camera.",
        "Use a lamp and never the Sun: a telescope in sunlight burns eyes, and its lenses set fire to things.",
    ];

    /// <summary>Gives the advice on one photo.</summary>
    public PhotoAdvice Advise(LetteringMeasures measures)
    {
        ArgumentNullException.ThrowIfNull(measures);
        var limits = Reading(measures).OfType<PhotoLimit>().OrderByDescending(limit => limit.Severity).ToList();
        limits = limits.FindAll(limit => !limits.Exists(cause => Explains(cause, limit, measures.Read)));
        if (!measures.ScaleSeen)
        {
            limits.Add(new PhotoLimit(LimitKind.NoScale, "scales seen", 0, 1, string.Empty, 1, "search for a checkerboard or a marker card", AdviceWords.Sentence(LimitKind.NoScale), AdviceWords.Steps(LimitKind.NoScale, measures, 1)));
        }

        return new PhotoAdvice(measures, [.. limits], Cautions);
    }

    /// <summary>
    /// What follows from what. Too little light, a washed-out picture, blur or blocks flatten strokes and change edges by themselves. A movement leaves strokes standing out in one
    /// direction: strokes that are farther from standing out than it accounts for are flat by themselves. Where nothing was read, the tube was looked at in place of letters: a bright
    /// line along it is no glare on them, and their size is a guess, so that blur counts for more than both.
    /// </summary>
    private static bool Explains(PhotoLimit cause, PhotoLimit effect, bool read) => (cause.Kind, effect.Kind) switch
    {
        (LimitKind.Focus or LimitKind.Motion, LimitKind.Glare) => !read,
        (LimitKind.Focus, LimitKind.Pixels) => !read && cause.Severity > effect.Severity,
        (LimitKind.Pixels, LimitKind.Focus) => read || cause.Severity >= effect.Severity,
        (LimitKind.Motion, LimitKind.FlatLight) => cause.Severity >= effect.Severity,
        (LimitKind.FlatLight, LimitKind.Motion) => cause.Severity > effect.Severity,
        (LimitKind.TooDark or LimitKind.TooBright, LimitKind.FlatLight or LimitKind.LightAlongStrokes or LimitKind.Focus or LimitKind.Motion or LimitKind.Compression or LimitKind.Glare) => true,
        (LimitKind.Focus or LimitKind.Motion or LimitKind.Glare or LimitKind.Compression or LimitKind.Angle, LimitKind.FlatLight or LimitKind.LightAlongStrokes) => true,
        (LimitKind.Motion or LimitKind.Compression, LimitKind.Focus) => true,
        (LimitKind.Compression, LimitKind.Motion) => true,
        (LimitKind.LightAlongStrokes, LimitKind.FlatLight) => true,
        (LimitKind.Pixels, LimitKind.FlatLight or LimitKind.LightAlongStrokes) => true,
        _ => false,
    };

    private IEnumerable<PhotoLimit?> Reading(LetteringMeasures m)
    {
        var height = (m.LetterHeight ?? (m.TubeDiameter is { } diameter ? diameter * _options.LetterOfDiameter : null))?.Pixels;
        if (height is { } tall)
        {
            var how = m.Read ? "height of the ink, median of the lines" : "diameter of the tube over 18, for nothing was read (common practice)";
            yield return Below(LimitKind.Pixels, "height of the letters", tall, _options.LetterHeight.Pixels, "px", how, m);
        }

        var allowed = Math.Max(_options.OrdinaryBlur.Pixels, (height ?? 0) * _options.BlurOfLetter);
        var (sharp, wide) = (m.SharpBlur.Pixels * HalfWidth, m.WideBlur.Pixels * HalfWidth);
        var stretched = Math.Max(_options.OrdinaryMotion.Pixels, (height ?? 0) * _options.MotionOfLetter);
        yield return Above(LimitKind.Focus, "width of the sharpest edges", sharp, allowed, "px", BlurSource, m);
        yield return sharp <= allowed && wide > sharp * _options.Elongation ? Above(LimitKind.Motion, "width of edges along the movement", wide, stretched, "px", BlurSource, m) : null;

        const string washed = "share of patches half a letter wide that are bright (235 of 255) and vary by less than 25 levels";
        var all = m.WashedShare >= _options.WashedAll || (m.MiddleLevel >= _options.WashedLevel && m.WashedShare >= _options.WashedAll * 2 / 3);
        yield return all ? Make(LimitKind.TooBright, "middle grey level", m.MiddleLevel, _options.WashedLevel, "of 255", Math.Max(1, m.WashedShare / _options.Washed), "median of the grey levels; " + washed, m) : null;
        yield return all ? null : Above(LimitKind.Glare, "share washed out", m.WashedShare * 100, _options.Washed * 100, "%", washed, m);
        yield return Below(LimitKind.TooDark, "brightest hundredth", m.BrightLevel, _options.BrightLevel, "of 255", "99th percentile of the grey levels", m);
        yield return m.Read ? Below(LimitKind.FlatLight, "contrast of the strokes", m.Contrast, _options.Contrast, string.Empty, "2nd to 98th percentile of grey levels at the size of strokes over the ground beside them", m) : null;
        if (m.StemsToBars is { } balance)
        {
            var limit = IsLitAlong(m, balance) ? _options.LitStrokeBalance : _options.StrokeBalance;
            yield return balance < _options.OrdinaryBalance
                ? Above(LimitKind.LightAlongStrokes, "bars over stems", 1 / balance, limit / _options.OrdinaryBalance, string.Empty, "root mean square of the slope of grey levels along and across the line", m)
                : Above(LimitKind.LightAlongStrokes, "stems over bars", balance, limit * _options.OrdinaryBalance, string.Empty, "root mean square of the slope of grey levels along and across the line", m);
        }

        yield return m.TurnedAway is { } away ? Above(LimitKind.Angle, "angle away from the camera", away.Degrees, _options.TurnedAway.Degrees, "degrees", "normal of the tube at the lettering and line of sight (computed)", m) : null;
        yield return m.CutByFrame ? new PhotoLimit(LimitKind.CutByFrame, "sides of the frame that the lettering touches", 1, 0, string.Empty, 1, "boxes of the letters", AdviceWords.Sentence(LimitKind.CutByFrame), AdviceWords.Steps(LimitKind.CutByFrame, m, 1)) : null;
        yield return Compression(m);
    }

    /// <summary>Tells whether the light is seen to run along the strokes that show less.</summary>
    private bool IsLitAlong(LetteringMeasures m, double stemsToBars) => m.Light is Outcome<LampSight>.Found { Value: var lamp } && lamp.Uncertainty.Degrees <= _options.LampUncertainty.Degrees
        && (stemsToBars < 1 ? lamp.FromSquare.Degrees : 90 - lamp.FromSquare.Degrees) <= _options.AlongStrokes.Degrees;

    private PhotoLimit? Compression(LetteringMeasures m)
    {
        var blocks = Above(LimitKind.Compression, "block borders over other steps", m.Blockiness, _options.Blockiness, string.Empty, "steps at the borders of 8 x 8 blocks (after Wang, Bovik and Evans, ICIP 2000)", m);
        return m.JpegQuality is { } quality && quality < _options.JpegQuality
            ? Below(LimitKind.Compression, "quality of the JPEG file", quality, _options.JpegQuality, "of 100", "tables of the file against ITU-T T.81 Annex K", m)! with { Severity = Math.Max((double)_options.JpegQuality / Math.Max(1, quality), blocks?.Severity ?? 1) }
            : blocks;
    }

    private static PhotoLimit? Above(LimitKind kind, string measure, double value, double limit, string unit, string source, LetteringMeasures m) =>
        value > limit ? Make(kind, measure, value, limit, unit, value / limit, source, m) : null;

    private static PhotoLimit? Below(LimitKind kind, string measure, double value, double limit, string unit, string source, LetteringMeasures m) =>
        value < limit ? Make(kind, measure, value, limit, unit, limit / Math.Max(value, limit * 0.01), source, m) : null;

    private static PhotoLimit Make(LimitKind kind, string measure, double value, double limit, string unit, double severity, string source, LetteringMeasures m) =>
        new(kind, measure, value, limit, unit, severity, source, AdviceWords.Sentence(kind), AdviceWords.Steps(kind, m, severity));
}
