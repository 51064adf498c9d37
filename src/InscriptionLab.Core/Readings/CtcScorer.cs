using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Readings;

/// <summary>
/// How probable a spelling is, given what the reader saw: the sum over all ways of laying its letters over the frames
/// (connectionist temporal classification, Graves et al., ICML 2006, equations 3 to 8). No language model takes part.
/// </summary>
public static class CtcScorer
{
    /// <summary>Gives ln P(text | line).</summary>
    /// <param name="posteriors">What the reader saw.</param>
    /// <param name="text">The whole line as it may be cut; letters are grapheme clusters. The empty text means that nothing is cut.</param>
    /// <returns>Zero or less; negative infinity where the line has too few frames for the text; null where the reader has no class for one of the letters, so that it cannot say.</returns>
    public static double? LogProbability(LinePosteriors posteriors, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return LogProbabilities(posteriors, [text])[0];
    }

    /// <summary>Gives ln P(text | line) of many texts over one line; texts that begin alike share the work.</summary>
    /// <param name="posteriors">What the reader saw.</param>
    /// <param name="texts">Whole lines as they may be cut.</param>
    /// <returns>One number a text, in the order given; see <see cref="LogProbability"/>.</returns>
    public static ImmutableArray<double?> LogProbabilities(LinePosteriors posteriors, IReadOnlyList<string> texts)
    {
        ArgumentNullException.ThrowIfNull(posteriors);
        ArgumentNullException.ThrowIfNull(texts);
        var matrix = new CtcMatrix(posteriors);
        var classes = texts.Select(matrix.ClassesOf).ToArray();
        var order = Enumerable.Range(0, classes.Length).Where(index => classes[index] is not null).ToArray();
        Array.Sort(order, (left, right) => classes[left].AsSpan().SequenceCompareTo(classes[right]));

        var results = new double?[classes.Length];
        var columns = new List<CtcPrefix> { CtcPrefix.Empty(matrix) };
        int[] previous = [];
        foreach (var index in order)
        {
            var letters = classes[index]!;
            var common = previous.AsSpan().CommonPrefixLength(letters);
            for (var place = common; place < letters.Length; place++)
            {
                if (columns.Count == place + 1)
                {
                    columns.Add(CtcPrefix.Unfilled(matrix));
                }

                columns[place + 1].Fill(matrix, columns[place], letters[place]);
            }

            results[index] = columns[letters.Length].LogProbability;
            previous = letters;
        }

        return [.. results];
    }
}
