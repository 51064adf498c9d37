using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>
/// Asks the posteriors of a line, where there are any, how much better the line explains the picture as read than with the form put in its
/// place: the exact sums over all alignments take the place of the listed alternatives wherever they are the more careful of the two.
/// </summary>
internal sealed class PictureEvidence(Reading reading, ComparerOptions options)
{
    private readonly Dictionary<int, Dictionary<string, double?>> _scores = [];

    internal ImmutableArray<NearestForm> Weigh(ImmutableArray<NearestForm> forms)
    {
        Score(forms);
        return [.. forms.Select(Weigh)];
    }

    private NearestForm Weigh(NearestForm form)
    {
        // Grouped as the spellings were scored: line by line, without the differences of case and shape that may stand between the letters of a swap.
        var weighed = new Dictionary<LetterDifference, LetterDifference>(ReferenceEqualityComparer.Instance);
        foreach (var group in Lines(form).SelectMany(line => Groups(Weighed(form, line))))
        {
            foreach (var (difference, found) in group.Zip(Weigh(group)))
            {
                weighed[difference] = found;
            }
        }

        return form with { Differences = [.. form.Differences.Select(difference => weighed.GetValueOrDefault(difference, difference))], LogLikelihoodRatio = WholeRatio(form) };
    }

    /// <summary>Letter by letter: the line with only this letter as attested, against the line as read.</summary>
    private IEnumerable<LetterDifference> Weigh(LetterDifference[] group)
    {
        var line = group[0].LineIndex;
        if (!_scores.TryGetValue(line, out var scores) || scores[LineSpelling.Free(reading.Lines[line])] is not { } free || double.IsNegativeInfinity(free))
        {
            return group;
        }

        if (scores[LineSpelling.With(reading.Lines[line], group)] is not { } attested)
        {
            return group.Select(difference => difference with { IsBeyondReader = true, Log10Ratio = 0, Probability = DifferenceFinder.ProbabilityOfDiffering(0) });
        }

        var ratio = Math.Clamp((attested - free) / Math.Log(10), -options.MaximumLog10Ratio, options.MaximumLog10Ratio);
        return group.Select(difference => difference.Log10Ratio >= ratio
            ? difference
            : difference with { Log10Ratio = ratio, Probability = DifferenceFinder.ProbabilityOfDiffering(ratio) });
    }

    private double? WholeRatio(NearestForm form)
    {
        var sum = 0.0;
        foreach (var line in Lines(form))
        {
            if (!_scores.TryGetValue(line, out var scores)
                || scores[LineSpelling.Free(reading.Lines[line])] is not { } free
                || scores[LineSpelling.With(reading.Lines[line], Weighed(form, line))] is not { } whole
                || double.IsNegativeInfinity(free))
            {
                return null;
            }

            sum += Math.Min(0, whole - free);
        }

        return sum;
    }

    private void Score(ImmutableArray<NearestForm> forms)
    {
        foreach (var line in forms.SelectMany(Lines).Distinct())
        {
            if (reading.Lines[line].Posteriors is not { } posteriors)
            {
                continue;
            }

            var read = reading.Lines[line];
            var here = forms.Where(form => Lines(form).Contains(line)).ToArray();
            var texts = here.Select(form => LineSpelling.With(read, Weighed(form, line)))
                .Concat(here.SelectMany(form => Groups(Weighed(form, line))).Select(group => LineSpelling.With(read, group)))
                .Append(LineSpelling.Free(read))
                .Distinct(StringComparer.Ordinal)
                .ToArray();
            var results = CtcScorer.LogProbabilities(posteriors, texts);
            _scores[line] = texts.Zip(results).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
        }
    }

    private static IEnumerable<int> Lines(NearestForm form) => form.Span is { } span ? Enumerable.Range(span.FirstLine, span.LastLine - span.FirstLine + 1) : [];

    private static LetterDifference[] Weighed(NearestForm form, int line) => [.. form.Differences.Where(difference => difference.LineIndex == line && IsWeighed(difference))];

    /// <summary>Case and shape are no question of spelling, and a line break has no frames.</summary>
    private static bool IsWeighed(LetterDifference difference) => difference.Kind is not (DifferenceKind.Case or DifferenceKind.LetterForm);

    /// <summary>Each difference alone, but the two letters of a swap together.</summary>
    private static IEnumerable<LetterDifference[]> Groups(LetterDifference[] differences)
    {
        for (var index = 0; index < differences.Length; index++)
        {
            var isSwap = differences[index].Kind == DifferenceKind.Swapped && index + 1 < differences.Length && differences[index + 1].Kind == DifferenceKind.Swapped;
            yield return isSwap ? [differences[index], differences[index + 1]] : [differences[index]];
            index += isSwap ? 1 : 0;
        }
    }
}
