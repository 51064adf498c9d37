using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace InscriptionLab.App.Examining;

/// <summary>Runs stages and keeps how long each took, all runs of a stage together; stops between two stages when the user asks for it.</summary>
/// <param name="clock">The clock.</param>
/// <param name="cancel">Stops between two stages.</param>
/// <param name="sideBySide">Whether what needs nothing of one another runs at the same time.</param>
internal sealed class StageWatch(TimeProvider clock, CancellationToken cancel, bool sideBySide = false)
{
    private readonly List<StageTime> _times = [];

    /// <summary>Gets the times so far, in the order in which the stages first ran.</summary>
    internal ImmutableArray<StageTime> Times => [.. _times];

    /// <summary>Does two things of which neither needs the other, each with a watch of its own; at the same time where that is wanted. Where both fail the first one's failure counts.</summary>
    internal (TFirst First, TSecond Second) Both<TFirst, TSecond>(Func<StageWatch, TFirst> first, Func<StageWatch, TSecond> second)
    {
        var (ofFirst, ofSecond) = (new StageWatch(clock, cancel, sideBySide), new StageWatch(clock, cancel, sideBySide));
        var done = sideBySide ? AtOnce(() => first(ofFirst), () => second(ofSecond)) : (first(ofFirst), second(ofSecond));
        foreach (var time in ofFirst._times.Concat(ofSecond._times))
        {
            Add(time.Stage, time.Elapsed);
        }

        return done;
    }

    /// <summary>Runs one stage.</summary>
    internal T Run<T>(string stage, Func<T> run)
    {
        cancel.ThrowIfCancellationRequested();
        var start = clock.GetTimestamp();
        var result = run();
        Add(stage, clock.GetElapsedTime(start));
        return result;
    }

    private static (TFirst First, TSecond Second) AtOnce<TFirst, TSecond>(Func<TFirst> first, Func<TSecond> second)
    {
        var beside = Task.Run(second, CancellationToken.None);
        TFirst done;
        try
        {
            done = first();
        }
        catch
        {
            // It works on the same pictures, so it has to end first.
            ((IAsyncResult)beside).AsyncWaitHandle.WaitOne();
            throw;
        }

        return (done, beside.GetAwaiter().GetResult());
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
