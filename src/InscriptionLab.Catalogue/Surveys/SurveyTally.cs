using System;

namespace InscriptionLab.Surveys;

/// <summary>Counts what a survey has done and reckons the time left.</summary>
internal sealed class SurveyTally(int total, TimeProvider clock)
{
    private readonly long _start = clock.GetTimestamp();
    private int _before;
    private int _now;
    private int _unusable;

    /// <summary>Gets how many photos this run examined.</summary>
    internal int ExaminedNow { get; private set; }

    /// <summary>Counts a file that an earlier run did.</summary>
    internal void FromBefore(bool unusable)
    {
        _before++;
        _unusable += unusable ? 1 : 0;
    }

    /// <summary>Counts a file that is done now.</summary>
    internal SurveyProgress Next(bool unusable, bool examined)
    {
        _now++;
        _unusable += unusable ? 1 : 0;
        ExaminedNow += examined ? 1 : 0;
        var seconds = clock.GetElapsedTime(_start).TotalSeconds;
        var rate = seconds > 0 ? _now / seconds : 0;
        var left = total - _before - _now;
        return new SurveyProgress(_before + _now, total, _unusable, rate, rate > 0 ? TimeSpan.FromSeconds(left / rate) : null);
    }
}
