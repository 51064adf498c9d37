using System;
using System.Collections.Generic;

namespace InscriptionLab.Readings;

/// <summary>The posteriors of a line turned round for scoring: one run of frames for each class, in double precision.</summary>
internal sealed class CtcMatrix
{
    private readonly double[] _byClass;
    private readonly Dictionary<string, int> _classOf = new(StringComparer.Ordinal);

    internal CtcMatrix(LinePosteriors posteriors)
    {
        Frames = posteriors.Frames;
        Classes = posteriors.Classes.Length;
        Blank = posteriors.Blank;
        _byClass = new double[Classes * Frames];
        for (var frame = 0; frame < Frames; frame++)
        {
            var row = posteriors.Frame(frame);
            for (var index = 0; index < row.Length; index++)
            {
                _byClass[(index * Frames) + frame] = row[index];
            }
        }

        for (var index = 0; index < Classes; index++)
        {
            if (index != Blank)
            {
                _classOf.TryAdd(posteriors.Classes[index], index);
            }
        }
    }

    internal int Frames { get; }

    internal int Classes { get; }

    internal int Blank { get; }

    /// <summary>Gives the log-probabilities of one class, one a frame.</summary>
    internal ReadOnlySpan<double> Of(int index) => _byClass.AsSpan(index * Frames, Frames);

    /// <summary>Gives the class of each letter of a text, or null where the reader has no class for one.</summary>
    internal int[]? ClassesOf(string text)
    {
        var letters = Graphemes.Of(text);
        var classes = new int[letters.Count];
        for (var index = 0; index < classes.Length; index++)
        {
            if (!_classOf.TryGetValue(letters[index], out classes[index]))
            {
                return null;
            }
        }

        return classes;
    }
}
