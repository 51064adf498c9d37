using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Lines;

/// <summary>Makes one line of pieces that lie in one row, and drops what lies inside a surer line.</summary>
/// <param name="options">What counts as one row.</param>
internal sealed class LineJoiner(LineFinderOptions options)
{
    /// <summary>Joins components until no two are pieces of one line.</summary>
    /// <param name="components">Cells of each component.</param>
    internal List<LineTrace> Join(IEnumerable<List<LineCell>> components)
    {
        var pieces = components.Select(cells => (Cells: cells, Trace: LineTracer.Trace(cells))).OrderByDescending(piece => piece.Trace.Length).ToList();
        for (var first = 0; first < pieces.Count; first++)
        {
            for (var second = first + 1; second < pieces.Count; second++)
            {
                if (!AreOneLine(pieces[first].Trace, pieces[second].Trace))
                {
                    continue;
                }

                List<LineCell> cells = [.. pieces[first].Cells, .. pieces[second].Cells];
                pieces[first] = (cells, LineTracer.Trace(cells));
                pieces.RemoveAt(second);
                second = first;
            }
        }

        return [.. pieces.Select(piece => piece.Trace).Where(IsLine)];
    }

    /// <summary>Of lines found more than once, keeps the surest.</summary>
    /// <param name="lines">Lines of one strip, from one or more scales.</param>
    /// <param name="standing">Lines that stay: none that lies over them is kept.</param>
    /// <returns>The lines kept, without those that stay.</returns>
    internal List<LineTrace> KeepSurest(IEnumerable<LineTrace> lines, IEnumerable<LineTrace> standing)
    {
        var kept = standing.ToList();
        var stay = kept.Count;
        foreach (var line in lines.OrderByDescending(line => line.Score * Math.Sqrt(line.Length * line.InkHeight)))
        {
            if (kept.TrueForAll(other => Overlap(line, other) <= options.LargestOverlap && Overlap(other, line) <= options.LargestOverlap))
            {
                kept.Add(line);
            }
        }

        return kept[stay..];
    }

    /// <summary>Gives the share of a line's middle that lies within another line's ink.</summary>
    internal static double Overlap(LineTrace line, LineTrace other)
    {
        const int Probes = 32;
        var inside = 0;
        for (var probe = 0; probe < Probes; probe++)
        {
            var (along, down) = other.Locate(line.At((probe + 0.5) * line.Length / Probes, 0));
            inside += along >= 0 && along <= other.Length && Math.Abs(down) <= other.InkHeight / 2 ? 1 : 0;
        }

        return (double)inside / Probes;
    }

    private bool IsLine(LineTrace line) => line.Score >= options.SmallestScore && line.InkHeight >= options.SmallestInkHeight && line.Length >= options.ShortestLine * line.InkHeight;

    private bool AreOneLine(LineTrace first, LineTrace second)
    {
        var agreement = (first.Along.X * second.Along.X) + (first.Along.Y * second.Along.Y);
        var height = Math.Max(first.InkHeight, second.InkHeight);
        if (Math.Abs(agreement) < options.DirectionAgreement || height > options.LargestHeightRatio * Math.Min(first.InkHeight, second.InkHeight))
        {
            return false;
        }

        var (start, startDown) = first.Locate(agreement < 0 ? second.End : second.Start);
        var (end, endDown) = first.Locate(agreement < 0 ? second.Start : second.End);
        var gap = Math.Max(start - first.Length, -end);
        var nearer = start > first.Length / 2 ? startDown : endDown;
        return gap <= options.WidestGap * height && Math.Abs(nearer) <= options.LargestStep * height;
    }
}
