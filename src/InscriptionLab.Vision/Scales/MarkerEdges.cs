using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Measures every edge inside and round a coded square. Inner edges run both ways between light and dark, so the shift of blurred edges toward light can be told from the square's size.</summary>
internal static class MarkerEdges
{
    /// <summary>Places along the edge of one cell at which it is measured, as shares: away from the cell's corners.</summary>
    private static readonly double[] Shares = [0.3, 0.5, 0.7];

    /// <summary>How far an edge is looked for, as a share of a cell: short of the next edge.</summary>
    private const double ReachShare = 0.4;

    /// <summary>Largest reach in pixels.</summary>
    private const double LargestReach = 4;

    /// <summary>Share of the step between light and dark that the slope must rise to, a pixel.</summary>
    private const double SmallestSlopeShare = 0.08;

    /// <summary>Reads the edges of one square.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="square">Its four corners, clockwise as seen from the top left of its pattern.</param>
    /// <param name="cells">Cells along a side, the black border counted.</param>
    /// <param name="board">Number of the square.</param>
    /// <param name="side">Side in millimetres.</param>
    internal static List<EdgeObservation> Read(LightPicture picture, PixelPoint[] square, int cells, int board, double side)
    {
        var plane = new PixelPoint[] { new(0, 0), new(cells, 0), new(cells, cells), new(0, cells) };
        var found = new List<EdgeObservation>();
        if (PlaneHomography.Fit(plane, square) is not { } map)
        {
            return found;
        }

        var light = new double[cells + 2][];
        for (var row = -1; row <= cells; row++)
        {
            light[row + 1] = new double[cells + 2];
            for (var column = -1; column <= cells; column++)
            {
                light[row + 1][column + 1] = Inside(picture, map, column + 0.5, row + 0.5);
            }
        }

        var dark = Enumerable.Range(0, cells).Average(i => light[1][i + 1]);
        var bright = Enumerable.Range(0, cells).Average(i => (light[0][i + 1] + light[cells + 1][i + 1]) / 2);
        var middle = (dark + bright) / 2;
        var step = side / cells;
        for (var k = 0; k <= cells; k++)
        {
            for (var along = 0; along < cells; along++)
            {
                Edge(picture, map, (true, k, along), (light[along + 1][k], light[along + 1][k + 1], middle, bright - dark), (board, step), found);
                Edge(picture, map, (false, k, along), (light[k][along + 1], light[k + 1][along + 1], middle, bright - dark), (board, step), found);
            }
        }

        return found;
    }

    private static void Edge(LightPicture picture, PlaneHomography map, (bool AcrossX, int K, int Along) place, (double Before, double After, double Middle, double Contrast) light, (int Board, double Step) square, List<EdgeObservation> found)
    {
        if ((light.Before > light.Middle) == (light.After > light.Middle))
        {
            return;
        }

        var polarity = light.After > light.Before ? 1 : -1;
        foreach (var share in Shares)
        {
            if (EdgePoint.Find(picture, map, place.AcrossX, place.K, place.Along + share, ReachShare, LargestReach, polarity, SmallestSlopeShare * light.Contrast) is { } at)
            {
                found.Add(new EdgeObservation(square.Board, place.AcrossX, place.K * square.Step, polarity, at));
            }
        }
    }

    private static double Inside(LightPicture picture, PlaneHomography map, double x, double y)
    {
        const double Spread = 0.2;
        var sum = 0.0;
        for (var i = -1; i <= 1; i++)
        {
            for (var j = -1; j <= 1; j++)
            {
                var at = map.ToPicture(x + (Spread * i), y + (Spread * j));
                sum += picture.At(at.X, at.Y) / 9;
            }
        }

        return sum;
    }
}
