using InscriptionLab.Measures;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Reading;

/// <summary>How lettering is found, turned and read, and what counts as no lettering.</summary>
public sealed record InscriptionReaderOptions
{
    /// <summary>Gets how lines are looked for.</summary>
    public LineFinderOptions Finder { get; init; } = new();

    /// <summary>Gets how lines are cut out.</summary>
    public LineCropOptions Crop { get; init; } = new();

    /// <summary>Gets how frames become letters.</summary>
    public EngravedReaderOptions Reader { get; init; } = new();

    /// <summary>Gets the probability of being lettering that a line must reach.</summary>
    /// <value>Default 0.5.</value>
    public Probability LetteringFrom { get; init; } = Probability.From(0.5);

    /// <summary>Gets the mean letter probability that a line must reach.</summary>
    /// <value>Default 0.5.</value>
    public Probability MeanLetterFrom { get; init; } = Probability.From(0.5);

    /// <summary>Gets the odds at which a line says for itself that it is upside down; below, the lines beside it decide together.</summary>
    /// <value>Default 20 to 1.</value>
    public double OwnTurnOdds { get; init; } = 20;
}
