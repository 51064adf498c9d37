using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.References;

namespace InscriptionLab.Findings;

/// <summary>What the picture says of one form of the list.</summary>
internal sealed class FormStanding
{
    private readonly JudgeOptions _options;

    internal FormStanding(NearestForm nearest, JudgeOptions options)
    {
        Nearest = nearest;
        _options = options;
        Words = new FormWords(nearest);
    }

    internal NearestForm Nearest { get; }

    internal FormWords Words { get; }

    internal bool IsAttested => Nearest.Form.Status == AttestationStatus.Attested;

    /// <summary>Gets a value indicating whether every letter read is that of the form, and no letter of it is missing.</summary>
    internal bool IsSpeltAlike => Nearest.SpellingDifferences.IsEmpty;

    /// <summary>Gets a value indicating whether the form may be meant by what was read.</summary>
    internal bool IsNear => Nearest.RelativeDistance <= _options.NearLimit && (IsSpeltAlike || Nearest.Letters >= _options.FewestLetters);

    /// <summary>Gets the letters that the picture shows to be other than the form's.</summary>
    internal ImmutableArray<LetterDifference> Against => [.. Words.LetterDifferences.Where(IsAgainst)];

    /// <summary>Gets the letters that the picture leaves open, differing or not.</summary>
    internal ImmutableArray<LetterDifference> Open =>
    [
        .. Words.LetterDifferences.Where(difference => !IsAgainst(difference))
            .Concat(Nearest.Agreements.Where(agreement => 1 - agreement.Probability.Value < _options.ReadableProbability))
            .OrderBy(place => place.LineIndex).ThenBy(place => place.LetterIndex),
    ];

    /// <summary>Gets a value indicating whether the picture speaks clearly against the form in at least one letter.</summary>
    internal bool IsExcluded => !Against.IsEmpty;

    /// <summary>Gets a value indicating whether the picture shows every letter of the form well enough.</summary>
    internal bool IsConfirmed => IsSpeltAlike && Open.IsEmpty && Nearest.Agreement.Value >= _options.AgreementProbability;

    /// <summary>Tells whether this form is only a part of a longer one laid over the same words.</summary>
    internal bool IsPartOf(FormStanding longer) =>
        Nearest.Letters < longer.Nearest.Letters && Nearest.Span is { } inner && longer.Nearest.Span is { } outer
        && outer.Holds(inner.FirstLine, inner.FirstLetter) && outer.Holds(inner.LastLine, inner.LastLetter);

    /// <summary>Tells whether a letter of the form is missing before the first letter of a line: it may lie outside the picture or the box round the line, whatever the frames inside it say.</summary>
    internal static bool IsBeforeLine(LetterDifference difference) => difference is { Kind: DifferenceKind.Missing, LetterIndex: 0 };

    private bool IsAgainst(LetterDifference difference) => difference.Log10Ratio <= -_options.DifferingLog10Ratio && !IsBeforeLine(difference);
}
