namespace InscriptionLab.Readings;

/// <summary>Which rivals of a letter are weighed.</summary>
public sealed record LetterWeigherOptions
{
    /// <summary>Gets the probability that a class must reach in some frame near the letter to be weighed as a rival.</summary>
    /// <value>Default 1e-4, far below the smallest alternative shown (0.5 %); 0 weighs every class at every place, pairs included, which is slow.</value>
    public double RivalFloor { get; init; } = 1e-4;

    /// <summary>Gets the probability under which a candidate is left out of the list (it still counts in the sum).</summary>
    /// <value>Default 1e-6.</value>
    public double ListFloor { get; init; } = 1e-6;
}
