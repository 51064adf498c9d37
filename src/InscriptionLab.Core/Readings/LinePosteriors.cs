using System;
using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>Frame-by-frame log-probabilities of a line, the base of every later comparison (connectionist temporal classification, Graves et al., ICML 2006).</summary>
public sealed class LinePosteriors
{
    private readonly float[] _logProbabilities;

    /// <summary>Takes over the numbers, which the caller must not change afterwards.</summary>
    /// <param name="classes">Character of each class; the class at <paramref name="blank"/> is the empty string.</param>
    /// <param name="blank">Index of the class that means "no new letter".</param>
    /// <param name="logProbabilities">Natural logarithms, frame after frame, one number a class.</param>
    /// <exception cref="ArgumentException">The numbers do not fill whole frames.</exception>
    public LinePosteriors(ImmutableArray<string> classes, int blank, float[] logProbabilities)
    {
        ArgumentNullException.ThrowIfNull(logProbabilities);
        ArgumentOutOfRangeException.ThrowIfNegative(blank);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(blank, classes.Length);
        if (logProbabilities.Length % classes.Length != 0)
        {
            throw new ArgumentException("The numbers must fill whole frames.", nameof(logProbabilities));
        }

        Classes = classes;
        Blank = blank;
        _logProbabilities = logProbabilities;
    }

    /// <summary>Gets the character of each class.</summary>
    public ImmutableArray<string> Classes { get; }

    /// <summary>Gets the index of the blank class.</summary>
    public int Blank { get; }

    /// <summary>Gets the number of frames.</summary>
    public int Frames => _logProbabilities.Length / Classes.Length;

    /// <summary>Gives the log-probabilities of one frame, one number a class.</summary>
    public ReadOnlySpan<float> Frame(int frame) => _logProbabilities.AsSpan(frame * Classes.Length, Classes.Length);

    /// <summary>
    /// Gives the posteriors at another temperature: logarithms divided by it and made to sum to 1 in each frame again (temperature scaling,
    /// Guo et al., ICML 2017). Above 1 the reader is less sure of itself; the best path stays the same.
    /// </summary>
    /// <param name="temperature">Above zero; 1 changes nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is not above zero or not finite.</exception>
    public LinePosteriors AtTemperature(double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        if (!double.IsFinite(temperature))
        {
            throw new ArgumentOutOfRangeException(nameof(temperature), temperature, "A temperature must be finite.");
        }

        var scaled = new float[_logProbabilities.Length];
        for (var start = 0; start < scaled.Length; start += Classes.Length)
        {
            var sum = LogSpace.Never;
            for (var index = start; index < start + Classes.Length; index++)
            {
                sum = LogSpace.Add(sum, _logProbabilities[index] / temperature);
            }

            for (var index = start; index < start + Classes.Length; index++)
            {
                scaled[index] = (float)((_logProbabilities[index] / temperature) - sum);
            }
        }

        return new LinePosteriors(Classes, Blank, scaled);
    }
}
