using System.Globalization;

namespace InscriptionLab.Evidence;

/// <summary>Something that could still be looked at, and how much it would take from the doubt between the three propositions.</summary>
/// <param name="What">What to look at.</param>
/// <param name="BitsNow">Entropy of the three propositions as they stand, in bits: 0 is certainty, log2 3 = 1.58 is no knowledge.</param>
/// <param name="BitsExpected">Entropy to be expected after looking, each answer weighed by how probable it now is.</param>
/// <param name="Answers">What the answers would make of the ratios of the house to the other two, in words.</param>
/// <param name="IsForOwnPrior">True where the odds beforehand are the user's; false where the three are taken as equally likely, for this comparison alone.</param>
public sealed record DecidingObservation(string What, double BitsNow, double BitsExpected, string Answers, bool IsForOwnPrior)
{
    /// <summary>Gets it in a sentence.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture,
        $"What would decide most between the three explanations: {What} (doubt from {BitsNow:0.00} to {BitsExpected:0.00} bits on average, 1.58 being no knowledge and 0 certainty; {Answers}){(IsForOwnPrior ? string.Empty : "; for this comparison alone the three are taken as equally likely beforehand")}.");
}
