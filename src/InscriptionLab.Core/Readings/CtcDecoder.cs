using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text;

namespace InscriptionLab.Readings;

/// <summary>Finds the most probable spellings of a line from its frames alone: no dictionary, no language model.</summary>
public static class CtcDecoder
{
    /// <summary>Gives the spelling of the single most probable path (Graves et al., ICML 2006, section 3.2, best path decoding).</summary>
    /// <param name="posteriors">What the reader saw.</param>
    public static string BestPath(LinePosteriors posteriors)
    {
        ArgumentNullException.ThrowIfNull(posteriors);
        var text = new StringBuilder();
        var previous = posteriors.Blank;
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var best = MostProbable(posteriors.Frame(frame));
            if (best != posteriors.Blank && best != previous)
            {
                text.Append(posteriors.Classes[best]);
            }

            previous = best;
        }

        return text.ToString();
    }

    /// <summary>
    /// Gives the most probable spellings, most probable first, by prefix search with a beam (Graves et al., ICML 2006, section 3.2, with a
    /// beam as is common practice). The beam only proposes: each probability is then summed exactly over all alignments.
    /// </summary>
    /// <param name="posteriors">What the reader saw.</param>
    /// <param name="options">How wide to look; null for the defaults.</param>
    /// <returns>At least one spelling; the empty text is one.</returns>
    public static ImmutableArray<CtcHypothesis> NBest(LinePosteriors posteriors, CtcBeamOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(posteriors);
        options ??= new CtcBeamOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.Width, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.Take, nameof(options));

        var texts = Search(posteriors, options).Select(beam => beam.Text(posteriors.Classes)).Append(BestPath(posteriors)).Distinct(StringComparer.Ordinal).ToArray();
        var scores = CtcScorer.LogProbabilities(posteriors, texts);
        return [.. texts
            .Select((text, index) => new CtcHypothesis(text, scores[index] ?? LogSpace.Never))
            .OrderByDescending(hypothesis => hypothesis.LogProbability)
            .ThenBy(hypothesis => hypothesis.Text, StringComparer.Ordinal)
            .Take(options.Take)];
    }

    private static List<CtcBeam> Search(LinePosteriors posteriors, CtcBeamOptions options)
    {
        var floor = Math.Log(options.ClassFloor);
        var kept = new List<CtcBeam> { CtcBeam.Start() };
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var row = posteriors.Frame(frame);
            var touched = new List<CtcBeam>(kept);
            foreach (var beam in kept)
            {
                beam.Stay(row[posteriors.Blank], beam.Last < 0 ? LogSpace.Never : row[beam.Last]);
                for (var index = 0; index < row.Length; index++)
                {
                    if (index != posteriors.Blank && row[index] >= floor)
                    {
                        touched.Add(beam.Extend(index, row[index]));
                    }
                }
            }

            foreach (var beam in touched)
            {
                beam.Step(frame);
            }

            kept = [.. touched.Distinct().Where(beam => beam.LogProbability > LogSpace.Never).OrderByDescending(beam => beam.LogProbability).Take(options.Width)];
        }

        return kept;
    }

    private static int MostProbable(ReadOnlySpan<float> row)
    {
        var best = 0;
        for (var index = 1; index < row.Length; index++)
        {
            if (row[index] > row[best])
            {
                best = index;
            }
        }

        return best;
    }
}
