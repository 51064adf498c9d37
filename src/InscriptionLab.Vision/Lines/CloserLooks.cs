using System;
using System.Collections.Generic;
using System.Linq;
using OpenCvSharp;

namespace InscriptionLab.Vision.Lines;

/// <summary>The parts of a strip that deserve a closer look: where a look at a coarser scale hints at lettering, with some surroundings.</summary>
internal static class CloserLooks
{
    /// <summary>Gives the parts.</summary>
    /// <param name="coarse">The look at the coarser scale, at the whole strip.</param>
    /// <param name="closer">How many times finer the closer look is.</param>
    /// <param name="size">Size of the whole strip in pixels of the closer look.</param>
    /// <param name="options">What is a hint, and how much surroundings are taken.</param>
    /// <returns>Rectangles in pixels of the closer look, none over another.</returns>
    internal static IReadOnlyList<Rect> Of(LineMaps coarse, double closer, Size size, LineFinderOptions options)
    {
        var cell = LineMaps.CellSize * closer;
        var parts = new List<Rect>();
        for (var row = 0; row < coarse.Rows; row++)
        {
            for (var column = 0; column < coarse.Columns; column++)
            {
                if (coarse.Core(column, row) >= options.HintThreshold)
                {
                    Add(parts, Around(column * cell, row * cell, cell, options.HintSurroundings, size));
                }
            }
        }

        return [.. parts.Where(part => part is { Width: > 0, Height: > 0 }).OrderBy(part => part.Top).ThenBy(part => part.Left)];
    }

    /// <summary>The cell with its surroundings, on the network's own steps.</summary>
    private static Rect Around(double x, double y, double cell, int surroundings, Size size)
    {
        var left = Math.Max(0, (int)x - surroundings) / LineDetector.SideStep * LineDetector.SideStep;
        var top = Math.Max(0, (int)y - surroundings) / LineDetector.SideStep * LineDetector.SideStep;
        var right = Math.Min(size.Width, LineDetector.RoundUp((int)(x + cell) + surroundings));
        var bottom = Math.Min(size.Height, LineDetector.RoundUp((int)(y + cell) + surroundings));
        return new Rect(left, top, right - left, bottom - top);
    }

    /// <summary>Adds a part; parts that meet become one.</summary>
    private static void Add(List<Rect> parts, Rect part)
    {
        for (var index = parts.FindIndex(other => other.IntersectsWith(part)); index >= 0; index = parts.FindIndex(other => other.IntersectsWith(part)))
        {
            part = part.Union(parts[index]);
            parts.RemoveAt(index);
        }

        parts.Add(part);
    }
}
