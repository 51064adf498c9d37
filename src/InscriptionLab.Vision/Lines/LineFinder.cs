using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Strips;
using OpenCvSharp;

namespace InscriptionLab.Vision.Lines;

/// <summary>Finds the lines of lettering in a strip, whichever way they run.</summary>
internal sealed class LineFinder
{
    private readonly LineDetector _detector;
    private readonly LineFinderOptions _options;
    private readonly LineJoiner _joiner;

    internal LineFinder(LineDetector detector, LineFinderOptions options)
    {
        _detector = detector;
        _options = options;
        _joiner = new LineJoiner(options);
    }

    /// <summary>Of traces of one strip that lie over one another, keeps the surest, and none that lies over a line already read.</summary>
    internal List<LineTrace> Surest(IEnumerable<LineTrace> traces, IEnumerable<LineTrace> read) => _joiner.KeepSurest(traces, read);

    /// <summary>Traces everything in a strip that may be a line, in no order; one line may be traced at several scales.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="cancel">Stops between scales.</param>
    internal List<LineTrace> Find(Strip strip, CancellationToken cancel)
    {
        var side = strip.Map.Bends ? _options.MaximumBentSide : _options.MaximumSide;
        var fit = Math.Min(1.0, (double)side / Math.Max(strip.Image.Width, strip.Image.Height));
        var scales = _options.Scales.Select(scale => scale * fit).Order().ToList();
        var coarse = _detector.Look(strip.Image, scales[0]);
        var traces = _joiner.Join(CoreComponents.Of(coarse, _options)).ConvertAll(trace => trace with { Score = trace.Score * _options.CoarseTrust });
        foreach (var scale in scales[1..])
        {
            cancel.ThrowIfCancellationRequested();
            var size = new Size((int)Math.Round(strip.Image.Width * scale), (int)Math.Round(strip.Image.Height * scale));
            var parts = CloserLooks.Of(coarse, scale / scales[0], size, _options);
            traces.AddRange(_joiner.Join(_detector.Look(strip.Image, scale, parts, cancel).SelectMany(maps => CoreComponents.Of(maps, _options))));
        }

        return traces;
    }
}
