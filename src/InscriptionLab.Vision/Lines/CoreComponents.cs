using System;
using System.Collections.Generic;

namespace InscriptionLab.Vision.Lines;

/// <summary>Gathers neighbouring cells that are lettering and run along one another; in which sense they read is left open.</summary>
internal static class CoreComponents
{
    /// <summary>Gives the cells of each component; eight neighbours, never across a change of direction.</summary>
    internal static List<List<LineCell>> Of(LineMaps maps, LineFinderOptions options)
    {
        var seen = new bool[maps.Columns * maps.Rows];
        var components = new List<List<LineCell>>();
        var front = new Stack<(int Column, int Row)>();
        for (var row = 0; row < maps.Rows; row++)
        {
            for (var column = 0; column < maps.Columns; column++)
            {
                if (seen[(row * maps.Columns) + column] || maps.Core(column, row) < options.CoreThreshold)
                {
                    continue;
                }

                seen[(row * maps.Columns) + column] = true;
                front.Push((column, row));
                var cells = new List<LineCell>();
                while (front.TryPop(out var at))
                {
                    cells.Add(maps[at.Column, at.Row]);
                    Spread(maps, options, at, seen, front);
                }

                if (cells.Count >= options.FewestCells)
                {
                    components.Add(cells);
                }
            }
        }

        return components;
    }

    private static void Spread(LineMaps maps, LineFinderOptions options, (int Column, int Row) from, bool[] seen, Stack<(int Column, int Row)> front)
    {
        for (var step = 0; step < 9; step++)
        {
            var (column, row) = (from.Column + (step % 3) - 1, from.Row + (step / 3) - 1);
            if (column < 0 || row < 0 || column >= maps.Columns || row >= maps.Rows || seen[(row * maps.Columns) + column])
            {
                continue;
            }

            if (maps.Core(column, row) >= options.CoreThreshold
                && Math.Abs(maps.Agreement(column, row, from.Column, from.Row)) >= options.DirectionAgreement)
            {
                seen[(row * maps.Columns) + column] = true;
                front.Push((column, row));
            }
        }
    }
}
