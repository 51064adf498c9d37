using System;
using System.Collections.Immutable;
using System.Linq;
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
    /// <summary>A peak counts as clear by this power of its probability: 0.9 as two thirds of a letter, 0.5 as a sixteenth.</summary>
    private const int ClearPower = 4;

    private readonly ImmutableArray<double> _peaks = LetterPeaks.Of(Posteriors);

    /// <summary>Gets the mean, over the letters of the best path, of the highest probability that a frame gives the letter; 0 without letters.</summary>
    internal double MeanPeak => _peaks.IsEmpty ? 0 : _peaks.Average();

    /// <summary>Gets how many letters of the best path are clearly there, each counting by its peak.</summary>
    internal double ClearLetters => _peaks.Sum(peak => Math.Pow(peak, ClearPower));
}
