using System;
using System.Collections.Immutable;
using System.Threading;

namespace InscriptionLab.App.Examining;

/// <summary>Runs stages one after the other and keeps how long each took; stops between two stages when the user asks for it.</summary>
internal sealed class StageWatch(TimeProvider clock, CancellationToken cancel)
{
    private readonly ImmutableArray<StageTime>.Builder _times = ImmutableArray.CreateBuilder<StageTime>();

    /// <summary>Gets the times so far, in the order in which the stages ran.</summary>
    internal ImmutableArray<StageTime> Times => _times.ToImmutable();

    /// <summary>Runs one stage.</summary>
    internal T Run<T>(string stage, Func<T> run)
    {
        cancel.ThrowIfCancellationRequested();
        var start = clock.GetTimestamp();
        var result = run();
        _times.Add(new StageTime(stage, clock.GetElapsedTime(start)));
        return result;
    }
}
