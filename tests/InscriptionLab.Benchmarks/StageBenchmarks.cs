using System;
using System.IO;
using System.Threading;
using BenchmarkDotNet.Attributes;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;

namespace InscriptionLab.Benchmarks;

/// <summary>One benchmark a stage, on photos of the samples.</summary>
[MemoryDiagnoser]
public class StageBenchmarks : IDisposable
{
    private Composition _composition = null!;
    private ExaminingStages _stages = null!;
    private Examiner _examiner = null!;
    private Examination _done = null!;
    private string _file = string.Empty;

    /// <summary>Gets or sets the photo.</summary>
    [Params("script.jpg", "roman-three-lines.jpg")]
    public string Sample { get; set; } = string.Empty;

    [GlobalSetup]
    public void Prepare()
    {
        _file = Path.Combine(Samples.Folder, Sample);
        _composition = new Composition();
        _stages = _composition.Stages(DemoReferences.Load());
        _examiner = _composition.Examiner(DemoReferences.Load());
        _done = _examiner.Examine(_file, CancellationToken.None);
    }

    [GlobalCleanup]
    public void Close() => Dispose();

    [Benchmark]
    public object Photo() => _stages.Open(_file);

    [Benchmark]
    public object Tube() => _stages.FindTubes(_done.Photo, CancellationToken.None);

    [Benchmark]
    public object Ring() => _stages.FindRing!(_done.Photo, CancellationToken.None);

    [Benchmark]
    public object Strip() => _done.Tube is { } tube ? _stages.Unroll(_done.Photo, tube, CancellationToken.None) : _stages.LayFlat(_done.Photo, CancellationToken.None);

    [Benchmark]
    public object Reading() => _stages.Read(_done.Photo, _done.Strip, CancellationToken.None);

    [Benchmark]
    public object Finding() => _stages.Judge(_stages.Compare(_done.Reading));

    [Benchmark]
    public object Whole() => RecordMaker.Of(_examiner.Examine(_file, CancellationToken.None));

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
        if (disposing)
        {
            _composition?.Dispose();
        }
    }
}
