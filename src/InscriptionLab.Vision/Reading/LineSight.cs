using System;
using System.Collections.Immutable;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>What the reading network sees in one line crop.</summary>
/// <param name="Posteriors">Frame-by-frame log-probabilities, calibrated.</param>
/// <param name="Orientation">Probabilities of upright, turned by 180 degrees, mirrored, mirrored and turned.</param>
/// <param name="Style">Probabilities of the styles, in the model's order.</param>
/// <param name="Lettering">Probability that this is lettering.</param>
/// <param name="Edges">For each frame, crop pixels from its centre to the left and to the right edge of the letter it shows.</param>
internal sealed record LineSight(
    LinePosteriors Posteriors,
    ImmutableArray<double> Orientation,
    ImmutableArray<double> Style,
    double Lettering,
    ImmutableArray<(float Left, float Right)> Edges)
{
    /// <summary>Gets the mean, over the letters of the best path, of the highest probability that a frame gives the letter; 0 without letters.</summary>
    internal double MeanPeak { get; } = Peaks(Posteriors);

    private static double Peaks(LinePosteriors posteriors)
    {
        var (sum, letters, previous, peak) = (0.0, 0, posteriors.Blank, 0.0);
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var row = posteriors.Frame(frame);
            var best = MostProbable(row);
            if (best != previous)
            {
                (sum, peak) = (sum + peak, 0);
                letters += best == posteriors.Blank ? 0 : 1;
            }

            peak = best == posteriors.Blank ? 0 : Math.Max(peak, Math.Exp(row[best]));
            previous = best;
        }

        return letters == 0 ? 0 : (sum + peak) / letters;
    }

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
