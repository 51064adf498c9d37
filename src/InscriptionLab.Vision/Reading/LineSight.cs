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
    ImmutableArray<(float Left, float Right)> Edges);
