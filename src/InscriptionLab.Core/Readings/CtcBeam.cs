using System.Collections.Generic;
using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>One beginning of a line in the prefix search; a node of a tree, so that a beginning reached in two ways is one.</summary>
internal sealed class CtcBeam
{
    private readonly CtcBeam? _parent;
    private readonly Dictionary<int, CtcBeam> _longer = [];
    private double _onBlank = LogSpace.Never;
    private double _onLetter = LogSpace.Never;
    private double _nextOnBlank = LogSpace.Never;
    private double _nextOnLetter = LogSpace.Never;
    private int _steppedAt = -1;

    private CtcBeam(CtcBeam? parent, int last)
    {
        _parent = parent;
        Last = last;
    }

    /// <summary>Gets the class of the last letter, or -1 where there is none.</summary>
    internal int Last { get; }

    /// <summary>Gets the log-probability of all paths so far that spell exactly this beginning.</summary>
    internal double LogProbability => LogSpace.Add(_onBlank, _onLetter);

    /// <summary>Gives the beginning without letters, before the first frame.</summary>
    internal static CtcBeam Start() => new(null, -1) { _onBlank = 0 };

    /// <summary>Adds the paths that spell nothing new in this frame.</summary>
    internal void Stay(double blank, double sameLetter)
    {
        _nextOnBlank = LogSpace.Add(_nextOnBlank, LogProbability + blank);
        _nextOnLetter = LogSpace.Add(_nextOnLetter, _onLetter + sameLetter);
    }

    /// <summary>Adds the paths that begin a new letter in this frame and gives the longer beginning.</summary>
    internal CtcBeam Extend(int letterClass, double logProbability)
    {
        if (!_longer.TryGetValue(letterClass, out var longer))
        {
            longer = new CtcBeam(this, letterClass);
            _longer.Add(letterClass, longer);
        }

        var from = letterClass == Last ? _onBlank : LogProbability;
        longer._nextOnLetter = LogSpace.Add(longer._nextOnLetter, from + logProbability);
        return longer;
    }

    /// <summary>Makes the sums of this frame the present ones; once a frame, however often it is called.</summary>
    internal void Step(int frame)
    {
        if (_steppedAt == frame)
        {
            return;
        }

        _steppedAt = frame;
        (_onBlank, _onLetter) = (_nextOnBlank, _nextOnLetter);
        (_nextOnBlank, _nextOnLetter) = (LogSpace.Never, LogSpace.Never);
    }

    /// <summary>Spells the beginning.</summary>
    internal string Text(ImmutableArray<string> classes)
    {
        var letters = new Stack<string>();
        for (var beam = this; beam._parent is not null; beam = beam._parent)
        {
            letters.Push(classes[beam.Last]);
        }

        return string.Concat(letters);
    }
}
