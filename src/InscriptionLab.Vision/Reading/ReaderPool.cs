using System;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>Readers of one kind that work side by side: one that can do only one thing at a time is started as often as photos are read at a time.</summary>
public sealed class ReaderPool : ILineReader
{
    private readonly ConcurrentBag<ILineReader> _free = [];
    private readonly Func<ILineReader> _start;

    /// <summary>Makes the pool.</summary>
    /// <param name="first">A reader that is started already.</param>
    /// <param name="start">Starts another.</param>
    public ReaderPool(ILineReader first, Func<ILineReader> start)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(start);
        Name = first.Name;
        _start = start;
        _free.Add(first);
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public ImmutableArray<LineReading> Read(ImmutableArray<LetteringLine> lines, CancellationToken cancel)
    {
#pragma warning disable CA2000 // The reader goes back into the pool, which owns it.
        var reader = _free.TryTake(out var free) ? free : _start();
#pragma warning restore CA2000
        try
        {
            return reader.Read(lines, cancel);
        }
        finally
        {
            _free.Add(reader);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        while (_free.TryTake(out var reader))
        {
            reader.Dispose();
        }
    }
}
