using System;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Comparison;

/// <summary>
/// The costs of one window in tables, and two lower bounds for the cost of laying a form over it: how many letters must differ at all, each at no less than
/// <see cref="LeastOfAnEdit"/>, and the cost of the best alignment itself without its steps (differences of letter shape left out).
/// </summary>
internal sealed class WindowCosts
{
    /// <summary>A letter that costs less than this counts as standing at a place, for the first bound.</summary>
    private const double AsGoodAsThere = 0.9;

    private const int BitsOfPlaces = 64;

    private readonly LetterWindow _window;
    private readonly double[][] _match;
    private readonly double[][] _ratio;
    private readonly double[] _added;
    private readonly double[] _missing;
    private readonly ImmutableArray<(string Fold, double Cost)>[] _pairs;
    private readonly ComparerOptions _options;

    internal WindowCosts(LetterWindow window, FoldAlphabet alphabet, ComparerOptions options)
    {
        (_window, _options) = (window, options);
        var folds = Enumerable.Range(0, alphabet.Count).Select(number => alphabet[number]).ToArray();
        var isPunctuation = folds.Select(LetterFold.IsPunctuation).ToArray();
        _ratio = [.. window.Places.Select(place => place.Weights is { } weights ? folds.Select(weights.Ratio).ToArray() : [])];
        _match = [.. folds.Select((fold, number) => window.Places.Select((place, at) => AlignmentCosts.Match(place, fold, isPunctuation[number], _ratio[at].Length > 0 ? _ratio[at][number] : 0, options)).ToArray())];
        _added = [.. window.Places.Select(place => AlignmentCosts.Added(place, options))];
        _missing = [.. Enumerable.Range(0, window.Places.Length + 1).Select(position => AlignmentCosts.MissingLetter(window, position, options))];
        _pairs = [.. window.Places.Select(place => place.Weights is { } weights
            ? weights.Likely(0).Where(fold => fold.Length > 1).Select(fold => (fold, AlignmentCosts.Cost(weights.Ratio(fold)))).ToImmutableArray()
            : [])];
        LeastOfAnEdit = Math.Min(AsGoodAsThere, _missing.Min());
        Unreadable = window.Places.Count(place => place.Weights is { IsUnreadable: true });
        (PlacesOf, Free) = Bound(folds, isPunctuation);
    }

    /// <summary>Gets the least cost of one letter that differs, beyond those that <see cref="Free"/> allows for.</summary>
    internal double LeastOfAnEdit { get; }

    /// <summary>Gets, for each number of the alphabet, the places with letters, as bits, where that letter may stand.</summary>
    internal ulong[] PlacesOf { get; }

    /// <summary>Gets how many letters may differ at less than that cost: places that the reader itself doubts, and letters that it takes for two.</summary>
    internal double Free { get; }

    /// <summary>
    /// Gets the number of places that cannot be read. They are left out of <see cref="PlacesOf"/>: each may stand for one letter, whichever it is, at no less than
    /// <see cref="ComparerOptions.UnreadableCost"/>, or for none at no cost.
    /// </summary>
    internal int Unreadable { get; }

    internal int FewestWords => _window.LineCount;

    /// <summary>Gives a lower bound for the cost of a form, from the number of its letters that differ.</summary>
    /// <param name="edits">Letters that differ from the places that can be read.</param>
    internal double AtLeast(int edits)
    {
        var differ = Math.Max(0, edits - Free);
        var unread = Math.Min(Unreadable, differ);
        return (Math.Min(_options.UnreadableCost, LeastOfAnEdit) * unread) + (LeastOfAnEdit * (differ - unread));
    }

    /// <summary>Gives the cost of the best alignment of a form, shapes of letters left out; anything above the limit where it is above it.</summary>
    internal double Cheapest(IndexedForm form, double limit)
    {
        var places = _window.Places.Length;
        Span<double> memory = places < 200 ? stackalloc double[3 * (places + 1)] : new double[3 * (places + 1)];
        var before = memory[..(places + 1)];
        var previous = memory.Slice(places + 1, places + 1);
        var current = memory[(2 * (places + 1))..];
        for (var place = 0; place <= places; place++)
        {
            current[place] = _window.CanStart[place] ? 0 : place == 0 ? AlignmentCosts.Never : current[place - 1] + _added[place - 1];
        }

        var (least, leastBefore) = (0.0, 0.0);
        for (var letter = 0; letter < form.Numbers.Length; letter++)
        {
            var spare = before;
            before = previous;
            previous = current;
            current = spare;
            leastBefore = least;
            least = Column(form, letter, before, previous, current);
            if (Math.Min(least, leastBefore) > limit)
            {
                return AlignmentCosts.Never;
            }
        }

        var best = AlignmentCosts.Never;
        for (var place = 0; place <= places; place++)
        {
            best = _window.CanEnd[place] ? Math.Min(best, current[place]) : best;
        }

        return best;
    }

    private double Column(IndexedForm form, int letter, ReadOnlySpan<double> before, ReadOnlySpan<double> previous, Span<double> current)
    {
        var number = form.Numbers[letter];
        var match = _match[number];
        var matchBefore = letter > 0 ? _match[form.Numbers[letter - 1]] : [];
        var isLetter = form.Letters[letter] != LetterFold.Space && !form.IsPunctuation[letter];
        var other = form.IsPunctuation[letter] ? _options.PunctuationCost : _options.SpacingCost;
        current[0] = previous[0] + (isLetter ? _missing[0] : other);
        var least = current[0];
        for (var place = 1; place < current.Length; place++)
        {
            var cost = Math.Min(previous[place] + (isLetter ? _missing[place] : other), Math.Min(previous[place - 1] + match[place - 1], current[place - 1] + _added[place - 1]));
            if (letter > 0 && _pairs[place - 1].Length > 0)
            {
                cost = Math.Min(cost, before[place - 1] + Pair(place - 1, form.Folds[letter - 1], form.Folds[letter]));
            }

            if (letter > 0 && place > 1 && match[place - 2] == 0 && matchBefore[place - 1] == 0)
            {
                cost = Math.Min(cost, before[place - 2] + Swap(place - 2, form.Numbers[letter - 1], number));
            }

            current[place] = cost;
            least = Math.Min(least, cost);
        }

        return least;
    }

    private double Swap(int place, int first, int second) => _ratio[place].Length == 0 || _ratio[place + 1].Length == 0
        ? AlignmentCosts.Never
        : AlignmentCosts.Cost(Math.Max(_ratio[place][first] * _ratio[place + 1][second], Math.Pow(10, -_options.MaximumLog10Ratio)));

    private double Pair(int place, string first, string second)
    {
        foreach (var (fold, cost) in _pairs[place])
        {
            if (fold.Length == first.Length + second.Length && fold.StartsWith(first, StringComparison.Ordinal) && fold.EndsWith(second, StringComparison.Ordinal))
            {
                return cost;
            }
        }

        return AlignmentCosts.Never;
    }

    private (ulong[] PlacesOf, double Free) Bound(string[] folds, bool[] isPunctuation)
    {
        var places = new ulong[folds.Length];
        var free = 0.0;
        var bit = 0;
        for (var place = 0; place < _window.Places.Length; place++)
        {
            var seen = _window.Places[place];
            if (seen.IsBreak)
            {
                continue;
            }

            if (seen.IsGap || seen.IsPunctuation)
            {
                // A letter that may stand where a space or a stop was read.
                free += Enumerable.Range(0, folds.Length).Any(number => IsLetter(number) && _match[number][place] < LeastOfAnEdit) ? 1 : 0;
                continue;
            }

            if (seen.Weights!.IsUnreadable)
            {
                free += _pairs[place].Select(pair => Math.Max(0, LettersOf(pair.Fold) - (pair.Cost / LeastOfAnEdit))).DefaultIfEmpty(0).Max();
                free += place > 0 && IsDoubtfulSwap(place) ? 1 : 0;
                continue;
            }

            for (var number = 0; number < folds.Length; number++)
            {
                places[number] |= IsLetter(number) && _match[number][place] < AsGoodAsThere && bit < BitsOfPlaces ? 1UL << bit : 0;
            }

            bit++;
            free += Math.Min(_added[place], Enumerable.Range(0, folds.Length).Where(number => !IsLetter(number)).Select(number => _match[number][place]).DefaultIfEmpty(1).Min()) < LeastOfAnEdit ? 1 : 0;
            free += _pairs[place].Select(pair => Math.Max(0, EditsOf(place, pair.Fold) - (pair.Cost / LeastOfAnEdit))).DefaultIfEmpty(0).Max();
            free += place > 0 && IsDoubtfulSwap(place) ? 1 : 0;
        }

        return bit > BitsOfPlaces || LeastOfAnEdit <= 0 ? (places, double.PositiveInfinity) : (places, free);

        // Two letters in the place of one, counted letter by letter: one of them may be the letter that stands there.
        int EditsOf(int place, string pair)
        {
            int[] letters = [.. Readings.Graphemes.Of(pair).Select(letter => Array.IndexOf(folds, letter)).Where(number => number < 0 || IsLetter(number))];
            return letters.Length == 0 ? 1 : letters.Length - (letters.Any(number => number >= 0 && _match[number][place] < AsGoodAsThere) ? 1 : 0);
        }

        int LettersOf(string pair) => Readings.Graphemes.Of(pair).Count;

        bool IsLetter(int number) => folds[number] != LetterFold.Space && !isPunctuation[number];
    }

    /// <summary>Two neighbours that the picture allows in the other order.</summary>
    private bool IsDoubtfulSwap(int place) =>
        _window.Places[place - 1].Weights is { IsSpace: false, IsPunctuation: false } first
        && _window.Places[place].Weights is { } second
        && AlignmentCosts.Cost(first.Ratio(second.Fold) * second.Ratio(first.Fold)) < LeastOfAnEdit;
}
