using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Likeness;

/// <summary>Shrinks and grows grey pictures by averaging areas, so that no pixel is left out.</summary>
internal static class PictureScaler
{
    /// <summary>Gives the mean grey level of each cell of an even grid laid over the picture, row after row.</summary>
    /// <param name="image">The picture.</param>
    /// <param name="columns">Columns of the grid, above zero.</param>
    /// <param name="rows">Rows of the grid, above zero.</param>
    internal static float[] ToGrid(GrayImage image, int columns, int rows)
    {
        var wide = new float[columns * image.Height];
        for (var y = 0; y < image.Height; y++)
        {
            for (var column = 0; column < columns; column++)
            {
                var row = y;
                wide[(y * columns) + column] = Mean(image.Width, columns, column, x => image[x, row]);
            }
        }

        var grid = new float[columns * rows];
        for (var column = 0; column < columns; column++)
        {
            for (var row = 0; row < rows; row++)
            {
                var at = column;
                grid[(row * columns) + column] = Mean(image.Height, rows, row, y => wide[(y * columns) + at]);
            }
        }

        return grid;
    }

    /// <summary>Gives the mean over the stretch of samples that cell number <paramref name="cell"/> of <paramref name="cells"/> covers, parts of samples by their share.</summary>
    private static float Mean(int samples, int cells, int cell, Func<int, float> sample)
    {
        var from = (double)cell * samples / cells;
        var to = (double)(cell + 1) * samples / cells;
        double sum = 0;
        for (var index = (int)from; index < Math.Min(samples, (int)Math.Ceiling(to)); index++)
        {
            sum += sample(index) * (Math.Min(index + 1, to) - Math.Max(index, from));
        }

        return (float)(sum / (to - from));
    }
}
