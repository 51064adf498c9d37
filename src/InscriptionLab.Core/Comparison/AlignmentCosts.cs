using System;

namespace InscriptionLab.Comparison;

/// <summary>
/// Cost of each step. A difference of spelling costs 1 - min(1, r), where r is P(picture | attested letter) over P(picture | its strongest
/// rival): 1 where the picture excludes the attested letter, 0 where it shows it or allows it as well as any other.
/// </summary>
internal sealed class AlignmentCosts(LetterWindow window, IndexedForm form, ComparerOptions options)
{
    /// <summary>What no alignment can pay.</summary>
    internal const double Never = double.PositiveInfinity;

    /// <summary>Gives the cost of a place over a letter of the form.</summary>
    internal double Match(int place, int letter)
    {
        var (read, fold) = (window.Places[place], form.Folds[letter]);
        return read.Weights is { } weights && weights.Fold == fold && LetterFold.IsShaped(read.Read) != LetterFold.IsShaped(form.Letters[letter])
            ? options.LetterFormCost
            : Match(read, fold, form.IsPunctuation[letter], read.Weights?.Ratio(fold) ?? 0, options);
    }

    /// <summary>Gives the cost of a place over a folded letter, shapes left out.</summary>
    internal static double Match(WindowPlace read, string fold, bool isPunctuation, double ratio, ComparerOptions options)
    {
        if (read.Weights is not { } weights)
        {
            return fold == LetterFold.Space ? 0 : Never;
        }

        if (weights.Fold == fold)
        {
            return 0;
        }

        if (weights.IsUnreadable)
        {
            return Math.Max(options.UnreadableCost, Cost(ratio));
        }

        return weights.IsPunctuation && isPunctuation ? options.PunctuationCost : Cost(ratio);
    }

    /// <summary>Gives the cost of a letter of the form that the reading lacks before a position.</summary>
    internal double Missing(int position, int letter) =>
        form.Folds[letter] == LetterFold.Space ? options.SpacingCost
        : form.IsPunctuation[letter] ? options.PunctuationCost
        : Cost(MissingRatio(position, letter));

    /// <summary>Gives the cost of a letter, not a space and not punctuation, that the reading lacks before a position.</summary>
    internal static double MissingLetter(LetterWindow window, int position, ComparerOptions options) => Cost(Odds(OverlookedLetter(window, position, options)));

    /// <summary>Gives P(picture | the letter is cut) over P(picture | it is not) for a letter of the form that the reading lacks.</summary>
    internal double MissingRatio(int position, int letter) => Odds(form.Folds[letter] == LetterFold.Space || form.IsPunctuation[letter]
        ? options.OverlookedPunctuation
        : OverlookedLetter(window, position, options));

    /// <summary>Gives the cost of a place that the form lacks.</summary>
    internal double Added(int place) => Added(window.Places[place], options);

    /// <summary>Gives the cost of a place that a form lacks.</summary>
    internal static double Added(WindowPlace read, ComparerOptions options) =>
        read.IsGap ? options.SpacingCost
        : read.IsPunctuation ? options.PunctuationCost
        : Cost(read.Weights!.Ratio(string.Empty));

    /// <summary>Gives the cost of two places over two letters in the other order.</summary>
    internal double Swap(int place, int letter) => IsSwap(place, letter) ? Cost(SwapRatio(place, letter)) : Never;

    /// <summary>Gives P(picture | both as attested) over P(picture | both as read) for two letters in the other order.</summary>
    internal double SwapRatio(int place, int letter) =>
        Math.Max(window.Places[place].Weights!.Ratio(form.Folds[letter]) * window.Places[place + 1].Weights!.Ratio(form.Folds[letter + 1]), Math.Pow(10, -options.MaximumLog10Ratio));

    /// <summary>Gives the cost of a place over two letters of the form.</summary>
    internal double Pair(int place, int letter) =>
        window.Places[place].Weights is { } weights && weights.Lists(PairFold(letter)) ? Cost(weights.Ratio(PairFold(letter))) : Never;

    /// <summary>Gives the two letters of the form from an index on, folded.</summary>
    internal string PairFold(int letter) => form.Folds[letter] + form.Folds[letter + 1];

    /// <summary>Gives the cost of a difference of spelling.</summary>
    internal static double Cost(double ratio) => 1 - Math.Min(1, ratio);

    private static double OverlookedLetter(LetterWindow window, int position, ComparerOptions options) =>
        Math.Max(options.OverlookedLetter, Math.Min(options.OverlookedBesideDoubt, options.UnlistedShare * window.DoubtAround(position)));

    private static double Odds(double share) => share / (1 - share);

    private bool IsSwap(int place, int letter) =>
        window.Places[place].Weights is { IsSpace: false, IsPunctuation: false } first
        && window.Places[place + 1].Weights is { IsSpace: false, IsPunctuation: false } second
        && first.Fold != second.Fold
        && first.Fold == form.Folds[letter + 1]
        && second.Fold == form.Folds[letter];
}
