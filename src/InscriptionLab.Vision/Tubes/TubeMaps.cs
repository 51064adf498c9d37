using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tubes;

/// <summary>What the tube network sees in a photo, cell by cell: how likely a cell shows the plain wall of a metal tube, and how likely an outline of one runs through it.</summary>
internal sealed class TubeMaps
{
    /// <summary>Maps of the network's output: anything else, wall, collar or barrel, outline.</summary>
    private const int Wall = 1;
    private const int Outline = 3;

    private readonly float[] _numbers;
    private readonly int _stride;
    private readonly int _plane;
    private readonly double _cellsPerPixel;

    /// <summary>Wraps the network's output.</summary>
    /// <param name="output">The output, 1 x 4 x rows x columns.</param>
    /// <param name="columns">Columns that show the photo; the rest is padding.</param>
    /// <param name="rows">Rows that show the photo.</param>
    /// <param name="cellsPerPixel">Cells a photo pixel.</param>
    internal TubeMaps(Native.NetworkOutput output, int columns, int rows, double cellsPerPixel)
    {
        _numbers = output.Numbers;
        _stride = (int)output.Shape[3];
        _plane = (int)(output.Shape[2] * output.Shape[3]);
        (Columns, Rows, _cellsPerPixel) = (columns, rows, cellsPerPixel);
    }

    private TubeMaps(float[] numbers, TubeMaps like)
    {
        _numbers = numbers;
        (_stride, _plane, _cellsPerPixel) = (like._stride, like._plane, like._cellsPerPixel);
        (Columns, Rows) = (like.Columns, like.Rows);
    }

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>Gives the mean of wall and outline, cell by cell of these maps, over them and others of the same photo.</summary>
    internal TubeMaps MeanWith(params ReadOnlySpan<TubeMaps> others)
    {
        var numbers = (float[])_numbers.Clone();
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                var at = (row * _stride) + column;
                var place = new PixelPoint(((column + 0.5) / _cellsPerPixel) - 0.5, ((row + 0.5) / _cellsPerPixel) - 0.5);
                foreach (var other in others)
                {
                    var (wall, outline) = other.At(place);
                    numbers[(Wall * _plane) + at] += wall;
                    numbers[(Outline * _plane) + at] += outline;
                }

                numbers[(Wall * _plane) + at] /= others.Length + 1;
                numbers[(Outline * _plane) + at] /= others.Length + 1;
            }
        }

        return new TubeMaps(numbers, this);
    }

    /// <summary>Gives, at a photo point, how likely plain tube wall is there, and how likely an outline of one.</summary>
    internal (float Wall, float Outline) At(PixelPoint point)
    {
        var x = Math.Clamp(((point.X + 0.5) * _cellsPerPixel) - 0.5, 0, Columns - 1);
        var y = Math.Clamp(((point.Y + 0.5) * _cellsPerPixel) - 0.5, 0, Rows - 1);
        var (left, top) = (Math.Min((int)x, Math.Max(0, Columns - 2)), Math.Min((int)y, Math.Max(0, Rows - 2)));
        var (right, bottom) = (Math.Min(left + 1, Columns - 1), Math.Min(top + 1, Rows - 1));
        var (u, v) = ((float)(x - left), (float)(y - top));
        float Of(int map) =>
            ((1 - v) * (((1 - u) * Value(map, left, top)) + (u * Value(map, right, top))))
            + (v * (((1 - u) * Value(map, left, bottom)) + (u * Value(map, right, bottom))));
        return (Of(Wall), Of(Outline));
    }

    /// <summary>Gives the share of the photo that is tube wall.</summary>
    internal double WallShare()
    {
        double sum = 0;
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                sum += Value(Wall, column, row);
            }
        }

        return sum / (Columns * (double)Rows);
    }

    /// <summary>Gives the outline probability of a cell.</summary>
    internal float OutlineOf(int column, int row) => Value(Outline, column, row);

    private float Value(int map, int column, int row) => _numbers[(map * _plane) + (row * _stride) + column];
}
