using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Comparison;

/// <summary>Says of an alignment where reading and form differ and where they agree, each place with the weight of the picture.</summary>
internal sealed class DifferenceFinder(Alignment alignment, ComparerOptions options)
{
    private readonly AlignmentCosts _costs = new(alignment.Window, alignment.Form, options);
    private readonly List<LetterDifference> _differences = [];
    private readonly List<LetterDifference> _agreements = [];
    private readonly List<(int Place, int Letter)> _paired = [];

    /// <summary>Gives the form as near as the alignment found it, without the posteriors' word.</summary>
    internal NearestForm Find()
    {
        foreach (var step in alignment.Steps)
        {
            Take(step);
        }

        var isOtherCase = CompareCases(out var caseDifferences);
        var (first, last) = (alignment.Window.Places[alignment.Start], alignment.Window.Places[alignment.End - 1]);
        return new NearestForm(
            alignment.Form.Form,
            first.Line,
            alignment.Cost + (options.CaseCost * caseDifferences.Count),
            [.. _differences.Concat(caseDifferences).OrderBy(difference => difference.LineIndex).ThenBy(difference => difference.LetterIndex).ThenBy(difference => difference.FormIndex)],
            null)
        {
            Span = new MatchedSpan(first.Line, first.Index, last.Line, last.Index),
            Letters = alignment.Form.LetterCount,
            IsOtherCase = isOtherCase,
            Agreements = [.. _agreements],
        };
    }

    private void Take(AlignmentStep step)
    {
        switch (step.Operation)
        {
            case AlignmentOperation.Match:
                TakeMatch(step);
                break;
            case AlignmentOperation.Missing:
                _differences.Add(At(step.Place, step.FormIndex, 1, string.Empty, MissingKind(step.FormIndex), _costs.MissingRatio(step.Place, step.FormIndex), string.Empty));
                break;
            case AlignmentOperation.Added:
                TakeAdded(step);
                break;
            case AlignmentOperation.Swap:
                var ratio = _costs.SwapRatio(step.Place, step.FormIndex);
                _differences.Add(Swapped(step.Place, step.FormIndex, ratio));
                _differences.Add(Swapped(step.Place + 1, step.FormIndex + 1, ratio));
                _paired.Add((step.Place, step.FormIndex + 1));
                _paired.Add((step.Place + 1, step.FormIndex));
                break;
            default:
                TakePair(step);
                break;
        }
    }

    private void TakeMatch(AlignmentStep step)
    {
        var place = alignment.Window.Places[step.Place];
        if (place.Weights is not { } weights)
        {
            return;
        }

        var fold = alignment.Form.Folds[step.FormIndex];
        var kind = weights.IsPunctuation && alignment.Form.IsPunctuation[step.FormIndex] ? DifferenceKind.Punctuation : DifferenceKind.Replaced;
        var found = At(step.Place, step.FormIndex, 1, place.Read, kind, weights.Ratio(fold), weights.Shown(weights.Rival(fold)));
        if (weights.Fold != fold)
        {
            _differences.Add(found);
            return;
        }

        _paired.Add((step.Place, step.FormIndex));
        if (weights.IsSpace || weights.IsPunctuation)
        {
            return;
        }

        _agreements.Add(found);
        if (LetterFold.IsShaped(place.Read) != LetterFold.IsShaped(alignment.Form.Letters[step.FormIndex]))
        {
            _differences.Add(SameLetter(step.Place, step.FormIndex, DifferenceKind.LetterForm));
        }
    }

    private void TakeAdded(AlignmentStep step)
    {
        var place = alignment.Window.Places[step.Place];
        var kind = place.IsGap ? DifferenceKind.Spacing : place.IsPunctuation ? DifferenceKind.Punctuation : DifferenceKind.Added;
        var ratio = place.Weights?.Ratio(string.Empty) ?? _costs.MissingRatio(step.Place, SpaceOrFirst());
        _differences.Add(At(step.Place, step.FormIndex, 0, place.Read, kind, ratio, place.Weights is { } weights ? weights.Shown(weights.Rival(string.Empty)) : place.Read));
    }

    /// <summary>A line break where the form has no space is weighed like any other space that may have been invented.</summary>
    private int SpaceOrFirst() => Math.Max(0, alignment.Form.Letters.IndexOf(LetterFold.Space));

    /// <summary>A letter that stands for two of the form: where it is one of the two, the other is missing.</summary>
    private void TakePair(AlignmentStep step)
    {
        var place = alignment.Window.Places[step.Place];
        var weights = place.Weights!;
        var ratio = weights.Ratio(_costs.PairFold(step.FormIndex));
        var rival = weights.Shown(weights.Rival(_costs.PairFold(step.FormIndex)));
        if (weights.Fold == alignment.Form.Folds[step.FormIndex])
        {
            _paired.Add((step.Place, step.FormIndex));
            _differences.Add(At(step.Place + 1, step.FormIndex + 1, 1, string.Empty, DifferenceKind.Missing, ratio, string.Empty));
        }
        else if (weights.Fold == alignment.Form.Folds[step.FormIndex + 1])
        {
            _paired.Add((step.Place, step.FormIndex + 1));
            _differences.Add(At(step.Place, step.FormIndex, 1, string.Empty, DifferenceKind.Missing, ratio, string.Empty));
        }
        else
        {
            _differences.Add(At(step.Place, step.FormIndex, 2, place.Read, DifferenceKind.Replaced, ratio, rival));
        }
    }

    private DifferenceKind MissingKind(int letter) =>
        alignment.Form.Letters[letter] == LetterFold.Space ? DifferenceKind.Spacing
        : alignment.Form.IsPunctuation[letter] ? DifferenceKind.Punctuation
        : DifferenceKind.Missing;

    /// <summary>The same letter in another case or shape, weighed exactly as written.</summary>
    private LetterDifference SameLetter(int place, int letter, DifferenceKind kind)
    {
        var (read, weights) = (alignment.Window.Places[place].Read, alignment.Window.Places[place].Weights!);
        return At(place, letter, 1, read, kind, weights.ExactRatio(alignment.Form.Letters[letter]), read);
    }

    private LetterDifference Swapped(int place, int letter, double ratio)
    {
        var read = alignment.Window.Places[place].Read;
        return At(place, letter, 1, read, DifferenceKind.Swapped, ratio, read);
    }

    private LetterDifference At(int place, int letter, int attested, string read, DifferenceKind kind, double ratio, string rival)
    {
        var (line, index) = PositionOf(place);
        var bound = options.MaximumLog10Ratio;
        var log10 = Math.Clamp(Math.Log10(ratio), -bound, bound);
        return new LetterDifference(string.Concat(alignment.Form.Letters.Skip(letter).Take(attested)), read, ProbabilityOfDiffering(log10), line, index)
        {
            Kind = kind,
            Log10Ratio = log10,
            Rival = rival,
            FormIndex = letter,
        };
    }

    /// <summary>Gives 1/(1 + r): the probability of the rival where attested letter and rival are equally likely beforehand.</summary>
    internal static Probability ProbabilityOfDiffering(double log10Ratio) => Probability.From(1 / (1 + Math.Pow(10, log10Ratio)));

    private (int Line, int Index) PositionOf(int place)
    {
        if (place < alignment.Window.Places.Length)
        {
            return (alignment.Window.Places[place].Line, alignment.Window.Places[place].Index);
        }

        var last = alignment.Window.Places[^1];
        return (last.Line, last.Index + 1);
    }

    /// <summary>Compares case word by word of the form, over the letters that are the same.</summary>
    private bool CompareCases(out List<LetterDifference> differences)
    {
        differences = [];
        var isOtherCase = false;
        var words = _paired
            .Where(pair => alignment.Form.Letters[pair.Letter] != LetterFold.Space)
            .GroupBy(pair => alignment.Form.Letters.Take(pair.Letter).Count(letter => letter == LetterFold.Space));
        foreach (var word in words)
        {
            var read = WordCases.Of(word.OrderBy(pair => pair.Place).Select(pair => LetterFold.Plain(alignment.Window.Places[pair.Place].Read)));
            var form = WordCases.Of(word.OrderBy(pair => pair.Letter).Select(pair => LetterFold.Plain(alignment.Form.Letters[pair.Letter])));
            var others = word.Where(pair => LetterFold.Plain(alignment.Window.Places[pair.Place].Read) != LetterFold.Plain(alignment.Form.Letters[pair.Letter])).ToArray();
            if (!WordCases.DifferInside(read, form))
            {
                isOtherCase |= others.Length > 0;
                continue;
            }

            differences.AddRange(others.Select(pair => SameLetter(pair.Place, pair.Letter, DifferenceKind.Case)));
        }

        return isOtherCase;
    }
}
