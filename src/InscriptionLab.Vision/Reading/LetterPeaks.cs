using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>How clearly letters stand in what a network saw. Both cases of a letter count as one: in a face of small capitals it may be sure of the letter and not of its case.</summary>
internal static class LetterPeaks
{
    /// <summary>Gives, for each letter of the best path, the highest probability that a frame gives it.</summary>
    internal static ImmutableArray<double> Of(LinePosteriors posteriors)
    {
        var otherCase = OtherCase(posteriors.Classes);
        var peaks = ImmutableArray.CreateBuilder<double>();
        var previous = posteriors.Blank;
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var row = posteriors.Frame(frame);
            var best = MostProbable(row);
            if (best == posteriors.Blank)
            {
                previous = best;
                continue;
            }

            if (best != previous && (otherCase[best] < 0 || otherCase[best] != previous))
            {
                peaks.Add(0);
            }

            var probability = Math.Exp(row[best]) + (otherCase[best] < 0 ? 0 : Math.Exp(row[otherCase[best]]));
            peaks[^1] = Math.Max(peaks[^1], Math.Min(1, probability));
            previous = best;
        }

        return peaks.ToImmutable();
    }

    /// <summary>Gives for each class the class of the same letter in the other case, -1 where there is none.</summary>
    internal static ImmutableArray<int> OtherCase(ImmutableArray<string> classes) => [.. classes.Select(name =>
    {
        var upper = name.ToUpperInvariant();
        var other = upper == name ? name.ToLowerInvariant() : upper;
        return name.Length != 1 || other == name ? -1 : classes.IndexOf(other);
    })];

    private static int MostProbable(ReadOnlySpan<float> row)
    {
        var best = 0;
        for (var index = 1; index < row.Length; index++)
        {
            best = row[index] > row[best] ? index : best;
        }

        return best;
    }
}
