using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Finds the directions along which the network's outlines line up: projected along a tube, its two outlines fall into two narrow bins.</summary>
internal static class RegionDirections
{
    /// <summary>Step of the search, degrees.</summary>
    private const int StepDegrees = 3;

    /// <summary>Outline probability below which a cell does not vote.</summary>
    private const float SmallestVote = 0.15f;

    /// <summary>Gives directions, the most lined up first, in radians in (-90, 90] degrees.</summary>
    /// <param name="maps">The network's maps.</param>
    /// <param name="count">How many directions at most.</param>
    /// <param name="smallestShare">Alignment, as a share of the best direction's, below which no direction is given.</param>
    internal static IReadOnlyList<double> Search(TubeMaps maps, int count, double smallestShare)
    {
        const int Steps = 180 / StepDegrees;
        var alignment = new double[Steps];
        for (var i = 0; i < Steps; i++)
        {
            alignment[i] = Alignment(maps, i * StepDegrees * Math.PI / 180);
        }

        var best = alignment.Max();
        return
        [
            .. Enumerable.Range(0, Steps)
                .Where(i => best > 0 && alignment[i] >= alignment[(i + 1) % Steps] && alignment[i] > alignment[(i + Steps - 1) % Steps] && alignment[i] >= smallestShare * best)
                .OrderByDescending(i => alignment[i])
                .Take(count)
                .Select(i => (i * StepDegrees > 90 ? (i * StepDegrees) - 180 : i * StepDegrees) * Math.PI / 180),
        ];
    }

    private static double Alignment(TubeMaps maps, double angle)
    {
        var (sine, cosine) = Math.SinCos(angle);
        var reach = (int)Math.Ceiling(Math.Sqrt((maps.Columns * (double)maps.Columns) + (maps.Rows * (double)maps.Rows)));
        var bins = new double[(2 * reach) + 2];
        for (var row = 0; row < maps.Rows; row++)
        {
            for (var column = 0; column < maps.Columns; column++)
            {
                var vote = maps.OutlineOf(column, row);
                if (vote >= SmallestVote)
                {
                    var at = (row * cosine) - (column * sine) + reach;
                    var low = (int)at;
                    bins[low] += vote * (1 - (at - low));
                    bins[low + 1] += vote * (at - low);
                }
            }
        }

        return bins.Sum(bin => bin * bin);
    }
}
