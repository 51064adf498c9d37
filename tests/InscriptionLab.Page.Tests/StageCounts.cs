using System;
using System.Collections.Concurrent;

namespace InscriptionLab.Page.Tests;

/// <summary>Counts how often stages run.</summary>
internal sealed class StageCounts
{
    private readonly ConcurrentDictionary<string, int> _counts = new(StringComparer.Ordinal);

    internal int this[string stage] => _counts.TryGetValue(stage, out var count) ? count : 0;

    internal T Count<T>(string stage, Func<T> run)
    {
        _counts.AddOrUpdate(stage, 1, (_, count) => count + 1);
        return run();
    }

    internal Func<TIn, TOut> Counted<TIn, TOut>(string stage, Func<TIn, TOut> run) => given => Count(stage, () => run(given));
}
