using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Light;

/// <summary>How far each witness of the lamp's side is believed. Numbers without another source were set on 20 rendered photos that are not reported as unseen.</summary>
public sealed record LampMeterOptions
{
    /// <summary>Gets the step over which directions are weighed, degrees.</summary>
    public double Step { get; init; } = 5;

    /// <summary>Gets the error of the grooves' side beyond what their letters scatter by.</summary>
    /// <value>Default 25 degrees.</value>
    public Angle GrooveError { get; init; } = Angle.FromDegrees(25);

    /// <summary>Gets how often the grooves tell the side at all where all strokes agree.</summary>
    public double GrooveTells { get; init; } = 0.85;

    /// <summary>Gets the agreement of the strokes from which on they are believed as far as <see cref="GrooveTells"/>.</summary>
    public double FullAgreement { get; init; } = 0.1;

    /// <summary>Gets the error of the angle round the axis that the brightest line tells.</summary>
    public Angle HighlightError { get; init; } = Angle.FromDegrees(20);

    /// <summary>Gets how often the brightest line is the lamp's where no other is nearly as bright.</summary>
    public double HighlightTells { get; init; } = 0.8;

    /// <summary>Gets the share of photos whose lamp rakes.</summary>
    public double Raking { get; init; } = 0.8;

    /// <summary>Gets the greatest height over the surface of a raking lamp.</summary>
    /// <value>Default 40 degrees.</value>
    public Angle RakingTo { get; init; } = Angle.FromDegrees(40);

    /// <summary>Gets the standard uncertainty above which the side counts as not told.</summary>
    /// <value>Default 60 degrees: with more, the lamp may as well stand on the other side.</value>
    public Angle WidestSpread { get; init; } = Angle.FromDegrees(60);
}
