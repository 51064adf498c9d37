using System;
using System.Collections.Generic;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Tests.Lines;

/// <summary>Detector maps as a faultless detector would give them for known lines.</summary>
internal static class DrawnLine
{
    internal static LineTrace Between(double x0, double y0, double x1, double y1, double height = 40, double bow = 0) =>
        new(new PixelPoint(x0, y0), new PixelPoint(x1, y1), bow, height, 1);

    internal static LineMaps Maps(int width, int height, double scale, params IReadOnlyList<LineTrace> lines) => Maps(width, height, scale, default, lines);

    internal static LineMaps Maps(int width, int height, double scale, (int Left, int Top) origin, params IReadOnlyList<LineTrace> lines)
    {
        var (columns, rows) = (width / LineMaps.CellSize, height / LineMaps.CellSize);
        var plane = columns * rows;
        var maps = new float[LineMaps.Count * plane];
        for (var cell = 0; cell < plane; cell++)
        {
            var at = new PixelPoint(
                ((((cell % columns) * LineMaps.CellSize) + 2) / scale) - 0.5,
                ((((cell / columns) * LineMaps.CellSize) + 2) / scale) - 0.5);
            foreach (var line in lines)
            {
                var (along, down) = line.Locate(at);
                var middle = line.Locate(line.At(along, 0)).Down;
                var off = down - middle;
                if (along < 0 || along > line.Length || Math.Abs(off) > line.InkHeight / 2)
                {
                    continue;
                }

                maps[cell] = Math.Abs(off) <= line.InkHeight / 4 ? 0.95f : 0.1f;
                maps[plane + cell] = 0.95f;
                maps[(2 * plane) + cell] = (float)line.Along.X;
                maps[(3 * plane) + cell] = (float)line.Along.Y;
                maps[(4 * plane) + cell] = (float)((off + (line.InkHeight / 2)) * scale);
                maps[(5 * plane) + cell] = (float)(((line.InkHeight / 2) - off) * scale);
                maps[(6 * plane) + cell] = (float)(along * scale);
                maps[(7 * plane) + cell] = (float)((line.Length - along) * scale);
            }
        }

        return new LineMaps(maps, columns, rows, scale, origin);
    }
}
