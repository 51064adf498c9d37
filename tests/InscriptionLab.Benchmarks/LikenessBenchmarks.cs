using System;
using System.Collections.Generic;
using System.Linq;
using BenchmarkDotNet.Attributes;
using InscriptionLab.Likeness;

namespace InscriptionLab.Benchmarks;

/// <summary>The ten marks most like one among 100,000, each compared: the search itself, and the index that is made once when a catalogue is opened.</summary>
[MemoryDiagnoser]
public class LikenessBenchmarks
{
    internal const int Marks = 100_000;
    private const int Asked = 10;

    private List<KeyValuePair<long, ReadOnlyMemory<sbyte>>> _marks = null!;
    private MarkIndex _index = null!;

    /// <summary>Draws embeddings of the size and spread of real ones: the search compares every one, so its time does not depend on what they say.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var random = new Random(11);
        var size = new MarkEmbedder(new MarkEmbedderOptions()).Dimensions;
        _marks = [.. Enumerable.Range(0, Marks).Select(number => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(number, Enumerable.Range(0, size).Select(_ => (sbyte)random.Next(-90, 91)).ToArray()))];
        _index = new MarkIndex(_marks);
    }

    [Benchmark]
    public object Search() => _index.Nearest(_marks[Marks / 2].Value.Span, Asked);

    [Benchmark]
    public object Index() => new MarkIndex(_marks);
}
