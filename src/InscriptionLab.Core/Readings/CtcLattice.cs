using System;

namespace InscriptionLab.Readings;

/// <summary>All beginnings and endings of one spelling against one line.</summary>
internal sealed class CtcLattice
{
    private readonly CtcMatrix _matrix;
    private readonly CtcPrefix[] _prefixes;
    private readonly CtcSuffix[] _suffixes;

    internal CtcLattice(CtcMatrix matrix, int[] letters)
    {
        _matrix = matrix;
        Letters = letters;
        _prefixes = new CtcPrefix[letters.Length + 1];
        _suffixes = new CtcSuffix[letters.Length + 1];
        _prefixes[0] = CtcPrefix.Empty(matrix);
        _suffixes[^1] = CtcSuffix.Empty(matrix);
        for (var place = 0; place < letters.Length; place++)
        {
            _prefixes[place + 1] = _prefixes[place].Extend(matrix, letters[place]);
            _suffixes[^(place + 2)] = _suffixes[^(place + 1)].Precede(matrix, letters[^(place + 1)]);
        }
    }

    /// <summary>Gets the class of each letter.</summary>
    internal int[] Letters { get; }

    /// <summary>Gets ln P(spelling | line).</summary>
    internal double LogProbability => _prefixes[^1].LogProbability;

    /// <summary>Gives the log-probability of a beginning followed by an ending.</summary>
    internal static double Join(CtcPrefix prefix, CtcSuffix suffix)
    {
        if (suffix.First < 0)
        {
            return prefix.LogProbability;
        }

        var sum = LogSpace.Never;
        for (var frame = 0; frame < suffix.OnLetter.Length; frame++)
        {
            sum = LogSpace.Add(sum, prefix.Before(frame, suffix.First) + suffix.OnLetter[frame]);
        }

        return sum;
    }

    /// <summary>Gives the first letters, <paramref name="count"/> of them.</summary>
    internal CtcPrefix Prefix(int count) => _prefixes[count];

    /// <summary>Gives the letters from place <paramref name="from"/> on.</summary>
    internal CtcSuffix Suffix(int from) => _suffixes[from];

    /// <summary>Gives the expected first, mean and expected last frame of a letter.</summary>
    internal (double Start, double Centre, double End) Span(int place)
    {
        var letter = Letters[place];
        var own = _matrix.Of(letter);
        var (prefix, suffix) = (_prefixes[place + 1], _suffixes[place]);
        double start = 0, end = 0, weighted = 0, weight = 0;
        for (var frame = 0; frame < own.Length; frame++)
        {
            start += frame * Math.Exp(_prefixes[place].Before(frame, letter) + suffix.OnLetter[frame] - LogProbability);
            end += frame * Math.Exp(prefix.OnLetter[frame] + _suffixes[place + 1].After(frame, letter) - LogProbability);
            var shown = Math.Exp(prefix.OnLetter[frame] + suffix.OnLetter[frame] - own[frame] - LogProbability);
            if (shown > 0)
            {
                weighted += frame * shown;
                weight += shown;
            }
        }

        return (start, weighted / weight, end);
    }
}
