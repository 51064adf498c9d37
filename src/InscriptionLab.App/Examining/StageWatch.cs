using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Threading;

namespace InscriptionLab.App.Examining;

/// <summary>Runs stages one after the other and keeps how long each took, all runs of a stage together; stops between two stages when the user asks for it.</summary>
internal sealed class StageWatch(TimeProvider clock, CancellationToken cancel)
{
    private readonly List<StageTime> _times = [];

    /// <summary>Gets the times so far, in the order in which the stages first ran.</summary>
    internal ImmutableArray<StageTime> Times => [.. _times];

    /// <summary>Runs one stage.</summary>
    internal T Run<T>(string stage, Func<T> run)
    {
        cancel.ThrowIfCancellationRequested();
        var start = clock.GetTimestamp();
        var result = run();
        Add(stage, clock.GetElapsedTime(start));
        return result;
    }

    private void Add(string stage, TimeSpan elapsed)
    {
        var known = _times.FindIndex(time => time.Stage == stage);
        if (known < 0)
        {
            _times.Add(new StageTime(stage, elapsed));
        }
        else
        {
            _times[known] = _times[known] with { Elapsed = _times[known].Elapsed + elapsed };
        }
    }
}
