using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Tubes;

/// <summary>How tubes are looked for. Where no other source is named, the value was chosen on rendered photos with known truth.</summary>
public sealed record TubeFinderOptions
{
    /// <summary>Gets the longer side, in pixels, of the picture in which edges are looked for.</summary>
    /// <value>1000: a silhouette blurred over 4 pixels of a 12 megapixel photo is then sharp, and threads of cloth begin to average out.</value>
    public int WorkingSide { get; init; } = 1000;

    /// <summary>Gets the longer side, in pixels, of the picture in which the axis direction is looked for.</summary>
    /// <value>240: only the broad bands of light and shade along the tube are left.</value>
    public int DirectionSide { get; init; } = 240;

    /// <summary>Gets the number of pieces into which the length of the picture is cut; edges are averaged over a piece, and a tube spans several.</summary>
    /// <value>32.</value>
    public int Strips { get; init; } = 32;

    /// <summary>Gets the smallest diameter looked for, as a share of the longer side.</summary>
    /// <value>0.03: lettering on a thinner tube is under 6 pixels high in a 1400 pixel photo.</value>
    public double SmallestDiameter { get; init; } = 0.03;

    /// <summary>Gets the steepest slope of a silhouette against the axis direction that is looked at (perspective makes silhouettes converge).</summary>
    /// <value>0.12, or 7 degrees.</value>
    public double SteepestSlope { get; init; } = 0.12;

    /// <summary>Gets how the focal length is guessed where the file names none.</summary>
    public FocalGuess Focal { get; init; } = new();

    /// <summary>Gets the score above which two outlines are taken for a tube, 0 to 1.</summary>
    /// <value>0.35: of 42 tubes found on rendered photos the two below it were wrong, and no right one was.</value>
    public Probability SmallestConfidence { get; init; } = Probability.From(0.35);
}
