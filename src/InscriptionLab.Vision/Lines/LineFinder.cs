using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Strips;

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

    /// <summary>Traces the lines of a strip, in reading order.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="cancel">Stops between scales.</param>
    internal List<LineTrace> Find(Strip strip, CancellationToken cancel)
    {
        var fit = Math.Min(1.0, (double)_options.MaximumSide / Math.Max(strip.Image.Width, strip.Image.Height));
        var traces = new List<LineTrace>();
        foreach (var scale in _options.Scales)
        {
            cancel.ThrowIfCancellationRequested();
            traces.AddRange(_joiner.Join(CoreComponents.Of(_detector.Look(strip.Image, scale * fit), _options)));
        }

        return ReadingOrder(_joiner.KeepSurest(traces));
    }

    /// <summary>Sorts lines from the reader's top to bottom, then along the line, taking the direction of the longest line as the reader's.</summary>
    internal static List<LineTrace> ReadingOrder(List<LineTrace> lines)
    {
        if (lines.Count < 2)
        {
            return lines;
        }

        var reader = lines.MaxBy(line => line.Length)!;
        var (along, down) = (reader.Along, reader.Down);
        double Down(LineTrace line) => Dot(line.At(line.Length / 2, 0), down);
        var rows = new List<List<LineTrace>>();
        foreach (var line in lines.OrderBy(Down))
        {
            // Lines whose middles lie within half a height of each other stand side by side.
            if (rows.Count > 0 && Down(line) - Down(rows[^1][0]) < Math.Min(line.InkHeight, rows[^1][0].InkHeight) / 2)
            {
                rows[^1].Add(line);
            }
            else
            {
                rows.Add([line]);
            }
        }

        return [.. rows.SelectMany(row => row.OrderBy(line => Dot(line.At(line.Length / 2, 0), along)))];
    }

    private static double Dot(Measures.PixelPoint point, (double X, double Y) direction) => (point.X * direction.X) + (point.Y * direction.Y);
}
