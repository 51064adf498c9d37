using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Lines;

/// <summary>The order in which lines are read: from the reader's top to bottom, then along the line. The longest line says which way the reader faces.</summary>
public static class ReadingOrder
{
    /// <summary>Lines whose middles lie within this share of the lower one's height stand side by side.</summary>
    private const double SideBySide = 0.5;

    /// <summary>Sorts lines.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="box">Gives a line's box, corners in reading order, all in pixels of one picture.</param>
    public static ImmutableArray<T> Of<T>(IEnumerable<T> lines, Func<T, Quad> box)
    {
        var placed = lines.Select(line => (Line: line, Box: box(line))).ToList();
        if (placed.Count < 2)
        {
            return [.. placed.Select(item => item.Line)];
        }

        var longest = placed.Select(item => item.Box).MaxBy(quad => quad.TopLeft.DistanceTo(quad.TopRight));
        var along = Unit(longest.TopLeft, longest.TopRight);
        var down = Unit(longest.TopLeft, longest.BottomLeft);
        var rows = new List<List<(T Line, Quad Box)>>();
        foreach (var item in placed.OrderBy(item => Dot(item.Box.Centre, down)))
        {
            if (rows.Count > 0 && Dot(item.Box.Centre, down) - Dot(rows[^1][0].Box.Centre, down) < SideBySide * Math.Min(Height(item.Box), Height(rows[^1][0].Box)))
            {
                rows[^1].Add(item);
            }
            else
            {
                rows.Add([item]);
            }
        }

        return [.. rows.SelectMany(row => row.OrderBy(item => Dot(item.Box.Centre, along))).Select(item => item.Line)];
    }

    private static double Height(Quad box) => box.TopLeft.DistanceTo(box.BottomLeft).Pixels;

    private static double Dot(PixelPoint point, (double X, double Y) direction) => (point.X * direction.X) + (point.Y * direction.Y);

    private static (double X, double Y) Unit(PixelPoint from, PixelPoint to)
    {
        var length = Math.Max(from.DistanceTo(to).Pixels, double.Epsilon);
        return ((to.X - from.X) / length, (to.Y - from.Y) / length);
    }
}
