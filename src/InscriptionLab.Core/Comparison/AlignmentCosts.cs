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
        if (read.IsBreak)
        {
            return fold == LetterFold.Space ? 0 : Never;
        }

        var weights = read.Weights!;
        if (weights.Fold == fold)
        {
            return LetterFold.IsShaped(read.Read) == LetterFold.IsShaped(form.Letters[letter]) ? 0 : options.LetterFormCost;
        }

        if (weights.IsUnreadable)
        {
            return Math.Max(options.UnreadableCost, Cost(weights.Ratio(fold)));
        }

        return weights.IsPunctuation && form.IsPunctuation[letter] ? options.PunctuationCost : Cost(weights.Ratio(fold));
    }

    /// <summary>Gives the cost of a letter of the form that the reading lacks before a position.</summary>
    internal double Missing(int position, int letter) =>
        form.Folds[letter] == LetterFold.Space ? options.SpacingCost
        : form.IsPunctuation[letter] ? options.PunctuationCost
        : Cost(MissingRatio(position, letter));

    /// <summary>Gives P(picture | the letter is cut) over P(picture | it is not) for a letter of the form that the reading lacks.</summary>
    internal double MissingRatio(int position, int letter)
    {
        var overlooked = form.Folds[letter] == LetterFold.Space || form.IsPunctuation[letter]
            ? options.OverlookedPunctuation
            : Math.Max(options.OverlookedLetter, options.UnlistedShare * window.DoubtAround(position));
        return overlooked / (1 - overlooked);
    }

    /// <summary>Gives the cost of a place that the form lacks.</summary>
    internal double Added(int place)
    {
        var read = window.Places[place];
        return read.IsGap ? options.SpacingCost
            : read.IsPunctuation ? options.PunctuationCost
            : Cost(read.Weights!.Ratio(string.Empty));
    }

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

    private static double Cost(double ratio) => 1 - Math.Min(1, ratio);

    private bool IsSwap(int place, int letter) =>
        window.Places[place].Weights is { IsSpace: false, IsPunctuation: false } first
        && window.Places[place + 1].Weights is { IsSpace: false, IsPunctuation: false } second
        && first.Fold != second.Fold
        && first.Fold == form.Folds[letter + 1]
        && second.Fold == form.Folds[letter];
}
