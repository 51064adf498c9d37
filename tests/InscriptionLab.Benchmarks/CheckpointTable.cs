using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;

namespace InscriptionLab.Benchmarks;

/// <summary>A row whenever a survey has come so far: rate and processor time since the row before, memory now and at most.</summary>
/// <param name="marks">Numbers of photos at which a row is written, in order.</param>
/// <param name="output">Where the rows go.</param>
/// <param name="csv">File that gets them too; null for none.</param>
internal sealed class CheckpointTable(IEnumerable<int> marks, TextWriter output, string? csv)
{
    private readonly Queue<int> _marks = new(marks);
    private WatchedSurvey.Look? _before;

    /// <summary>Gets how many photos were done before this run.</summary>
    internal int Before { get; private set; }

    /// <summary>Writes a row where a mark is passed.</summary>
    internal void See(WatchedSurvey.Look look)
    {
        if (_before is null)
        {
            (_before, Before) = (look, look.Done);
            Row("photos done", "seconds", "photos a second", "processor seconds a photo", "MB now", "MB at most");
        }

        if (_marks.Count > 0 && look.Done >= _marks.Peek() && look.Done > _before.Done)
        {
            while (_marks.Count > 0 && look.Done >= _marks.Peek())
            {
                _marks.Dequeue();
            }

            Write(look);
        }
    }

    /// <summary>Writes the row of the end where the last mark was passed between two looks.</summary>
    internal void End(WatchedSurvey.Look look)
    {
        if (_before is not null && look.Done > _before.Done)
        {
            Write(look);
        }
    }

    private void Write(WatchedSurvey.Look look)
    {
        var (photos, seconds) = (look.Done - _before!.Done, look.Seconds - _before.Seconds);
        Row(
            Number(look.Done, "0"),
            Number(look.Seconds, "0.0"),
            Number(photos / seconds, "0.00"),
            Number((look.ProcessorSeconds - _before.ProcessorSeconds) / photos, "0.00"),
            Number(look.Megabytes, "0"),
            Number(look.MostMegabytes, "0"));
        _before = look;
    }

    private void Row(params string[] cells)
    {
        output.WriteLine($"| {string.Join(" | ", cells)} |");
        output.Flush();
        if (csv is not null)
        {
            File.AppendAllText(csv, string.Join(',', cells.Select(cell => cell.Replace(' ', '_'))) + "\n");
        }
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
