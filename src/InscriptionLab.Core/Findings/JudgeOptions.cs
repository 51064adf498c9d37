using System;

namespace InscriptionLab.Findings;

/// <summary>Thresholds of the judgement.</summary>
public sealed record JudgeOptions
{
    /// <summary>Gets the largest distance, in letters for each letter of a form, at which the form may be meant.</summary>
    /// <value>Default 0.25, one letter in four: chosen so that the towns, streets and trade words of the sample photos come near to no form of the demonstration list, while every misspelling of them does; see the tests.</value>
    public double NearLimit { get; init; } = 0.25;

    /// <summary>Gets the fewest letters that a form must have to be meant by lettering that differs from it.</summary>
    /// <value>Default 4: of a word of three letters a third would be another word.</value>
    public int FewestLetters { get; init; } = 4;

    /// <summary>Gets the decimal logarithm of the ratio, against the attested letter, from which a letter counts as really differing.</summary>
    /// <value>Default 2, a ratio of 100: the lower edge of "moderately strong" support in the scale of <see cref="VerbalScale"/>.</value>
    public double DifferingLog10Ratio { get; init; } = 2;

    /// <summary>Gets the probability, against its strongest rival, from which a letter counts as readable.</summary>
    /// <value>Default 0.8, four to one: a choice; a letter less sure is named, and the photo cannot decide.</value>
    public double ReadableProbability { get; init; } = 0.8;

    /// <summary>Gets the probability that all letters of a form are cut as it has them, from which the lettering agrees.</summary>
    /// <value>Default 0.5: more likely than not that there is no differing letter anywhere.</value>
    public double AgreementProbability { get; init; } = 0.5;

    /// <summary>Gets the decimal logarithm of the largest ratio that is ever printed; beyond it stands "at least".</summary>
    /// <value>Default 4, a ratio of 10,000, as in <see cref="Comparison.ComparerOptions.MaximumLog10Ratio"/>; sources of the verbal scale disagree above 1,000.</value>
    public double MaximumLog10Ratio { get; init; } = 4;

    /// <summary>Gets the height of lettering, in pixels of the photo, under which going nearer is advised.</summary>
    /// <value>Default 20: common practice in text recognition.</value>
    public double SmallInkHeight { get; init; } = 20;

    internal void Validate()
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(NearLimit);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(NearLimit, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(FewestLetters);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(DifferingLog10Ratio);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaximumLog10Ratio);
        ArgumentOutOfRangeException.ThrowIfNegative(SmallInkHeight);
        foreach (var probability in (ReadOnlySpan<double>)[ReadableProbability, AgreementProbability])
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(probability, 0.5);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        }
    }
}
