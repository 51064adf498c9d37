using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>A form of the reference list near to what was read, with every difference.</summary>
/// <param name="Form">The row of the list.</param>
/// <param name="LineIndex">Line of the reading it was compared with, from 0; the first of them where the form runs over several.</param>
/// <param name="Distance">Weighted edit distance, in letters.</param>
/// <param name="Differences">Differences in reading order; empty where the two are alike letter by letter.</param>
/// <param name="LogLikelihoodRatio">Natural logarithm of P(picture | this form is cut) over P(picture | the free reading is cut), zero or less; null where the reader gives no posteriors.</param>
public sealed record NearestForm(
    ReferenceForm Form,
    int LineIndex,
    double Distance,
    ImmutableArray<LetterDifference> Differences,
    double? LogLikelihoodRatio)
{
    /// <summary>Gets the letters of the reading that the form was laid over; null where none was.</summary>
    public MatchedSpan? Span { get; init; }

    /// <summary>Gets the number of letters, digits and ampersands of the form: its length without spaces and punctuation.</summary>
    public int Letters { get; init; }

    /// <summary>Gets a value indicating whether the reading is in another case than the form, word for word: capitals for small letters or the reverse.</summary>
    public bool IsOtherCase { get; init; }

    /// <summary>
    /// Gets the places where reading and form have the same letter, each with its strongest rival and the probability that the rival is cut
    /// instead; in reading order. Empty where the form was not laid over the reading letter by letter.
    /// </summary>
    public ImmutableArray<LetterDifference> Agreements { get; init; } = [];

    /// <summary>
    /// Gets the probability that every letter of the form is cut as the form has it: the product over the letters of the probability that
    /// the letter and not its strongest rival is cut, letters taken as independent.
    /// </summary>
    public Probability Agreement => Probability.From(Agreements.Concat(Differences.Where(difference => difference.IsSpelling)).Aggregate(1.0, (product, place) => product * (1 - place.Probability.Value)));

    /// <summary>Gets the differences of spelling, in reading order.</summary>
    public ImmutableArray<LetterDifference> SpellingDifferences => [.. Differences.Where(difference => difference.IsSpelling)];

    /// <summary>Gets the distance over the number of letters of the form.</summary>
    public double RelativeDistance => Letters > 0 ? Distance / Letters : double.PositiveInfinity;
}
