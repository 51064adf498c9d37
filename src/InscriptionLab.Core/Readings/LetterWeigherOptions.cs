namespace InscriptionLab.Readings;

/// <summary>Which rivals of a letter are weighed.</summary>
public sealed record LetterWeigherOptions
{
    /// <summary>Gets the probability that a class must reach in some frame near the letter to be weighed as a rival.</summary>
    /// <value>Default 1e-4, far below the smallest alternative shown (0.5 %); 0 weighs every class at every place.</value>
    public double RivalFloor { get; init; } = 1e-4;

    /// <summary>Gets how many rivals, the most probable ones, are also tried two by two in place of a letter.</summary>
    /// <value>Default 10: the work grows with the square, and a line that shows lettering rarely leaves more than a handful.</value>
    public int PairedRivals { get; init; } = 10;

    /// <summary>Gets the probability under which a candidate is left out of the list (it still counts in the sum).</summary>
    /// <value>Default 1e-6.</value>
    public double ListFloor { get; init; } = 1e-6;
}
