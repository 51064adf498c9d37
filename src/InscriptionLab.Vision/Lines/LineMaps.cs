using System;

namespace InscriptionLab.Vision.Lines;

/// <summary>What the line detector says of a strip, on its coarse grid. Distances are turned into strip pixels.</summary>
internal sealed class LineMaps
{
    /// <summary>Pixels of the detector's input a cell, in each direction.</summary>
    internal const int CellSize = 4;

    /// <summary>Maps a cell: core, ink, direction cosine and sine, distances to ink top, ink bottom, start and end.</summary>
    internal const int Count = 8;

    private readonly float[] _maps;
    private readonly double _scale;
    private readonly int _left;
    private readonly int _top;

    /// <summary>Takes over the detector's output.</summary>
    /// <param name="maps">Map after map, row after row.</param>
    /// <param name="columns">Cells across.</param>
    /// <param name="rows">Cells down.</param>
    /// <param name="scale">Input pixels a strip pixel.</param>
    /// <param name="origin">Input pixels of the whole strip to the left of the first cell and above it.</param>
    internal LineMaps(float[] maps, int columns, int rows, double scale, (int Left, int Top) origin = default)
    {
        if (maps.Length != Count * columns * rows)
        {
            throw new ArgumentException("The maps must fill the grid.", nameof(maps));
        }

        (_maps, Columns, Rows, _scale, _left, _top) = (maps, columns, rows, scale, origin.Left, origin.Top);
    }

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>Gets strip pixels a cell.</summary>
    internal double Pitch => CellSize / _scale;

    /// <summary>Gives what one cell says.</summary>
    internal LineCell this[int column, int row]
    {
        get
        {
            var at = (row * Columns) + column;
            float Map(int index) => _maps[(index * Columns * Rows) + at];
            var (cosine, sine) = ((double)Map(2), (double)Map(3));
            var norm = Math.Max(1e-6, Math.Sqrt((cosine * cosine) + (sine * sine)));
            return new LineCell(
                ((_left + (column * CellSize) + (CellSize / 2.0)) / _scale) - 0.5,
                ((_top + (row * CellSize) + (CellSize / 2.0)) / _scale) - 0.5,
                Map(0),
                cosine / norm,
                sine / norm,
                Map(4) / _scale,
                Map(5) / _scale,
                Map(6) / _scale,
                Map(7) / _scale);
        }
    }

    /// <summary>Gives the probability that a cell lies on the inner half of a line.</summary>
    internal double Core(int column, int row) => _maps[(row * Columns) + column];

    /// <summary>Gives the cosine of the angle between the reading directions of two cells.</summary>
    internal double Agreement(int column, int row, int otherColumn, int otherRow)
    {
        var (at, other, plane) = ((row * Columns) + column, (otherRow * Columns) + otherColumn, Columns * Rows);
        return (_maps[(2 * plane) + at] * _maps[(2 * plane) + other]) + (_maps[(3 * plane) + at] * _maps[(3 * plane) + other]);
    }
}
