using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>How doubt is shown in a transcription.</summary>
public sealed record LeidenOptions
{
    /// <summary>Gets the probability under which a letter is dotted as unclear.</summary>
    /// <value>Default 0.9: one letter in ten of those just above it may be wrong. A choice of this program; the conventions give no number.</value>
    public Probability UnclearBelow { get; init; } = Probability.From(0.9);

    /// <summary>Gets the probability that an alternative must reach to stand beside an unclear letter in an edition.</summary>
    /// <value>Default 0.05, so that editions stay short; every alternative from 0.5 % on is in the reading itself.</value>
    public Probability ApparatusFrom { get; init; } = Probability.From(0.05);

    /// <summary>Gets the sign for a letter whose traces cannot be read.</summary>
    /// <value>Default <see cref="LeidenSigla.Dots"/>.</value>
    public LeidenSigla Sigla { get; init; } = LeidenSigla.Dots;
}
