using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>How the reader's frames become letters.</summary>
public sealed record EngravedReaderOptions
{
    /// <summary>Gets how wide the search for the most probable spelling looks.</summary>
    public CtcBeamOptions Beam { get; init; } = new();

    /// <summary>Gets which rivals of a letter are weighed.</summary>
    public LetterWeigherOptions Weigher { get; init; } = new();

    /// <summary>Gets the probability from which on an alternative is kept.</summary>
    /// <value>Default 0.005: one in two hundred.</value>
    public Probability AlternativesFrom { get; init; } = Probability.From(0.005);

    /// <summary>Gets the probability under which a letter is given as unreadable, with its candidates as alternatives.</summary>
    /// <value>Default 0.3.</value>
    public Probability UnreadableBelow { get; init; } = Probability.From(0.3);
}
