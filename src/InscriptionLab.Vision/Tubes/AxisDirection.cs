using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Finds the directions along which a picture is streaky: along a tube, light and shade change little; across it, much.</summary>
internal static class AxisDirection
{
    /// <summary>Step of the search, degrees.</summary>
    private const int StepDegrees = 4;

    /// <summary>Pieces into which the picture is cut, so that a tube that ends within it still shows.</summary>
    private const int Strips = 6;

    /// <summary>Rows between the two colours that are compared.</summary>
    private const int Gap = 4;

    /// <summary>Gives directions, the most streaky first, in radians in (-90, 90] degrees.</summary>
    /// <param name="picture">A small picture.</param>
    /// <param name="count">How many directions at most.</param>
    /// <param name="smallestShare">Streakiness, as a share of the best direction's, below which no direction is given.</param>
    internal static IReadOnlyList<double> Search(LabPicture picture, int count, double smallestShare)
    {
        const int Steps = 180 / StepDegrees;
        var streaks = new double[Steps];
        for (var i = 0; i < Steps; i++)
        {
            streaks[i] = Streakiness(TurnedProfiles.From(picture, Degrees(i) * Math.PI / 180, Strips));
        }

        var best = streaks.Max();
        return
        [
            .. Enumerable.Range(0, Steps)
                .Where(i => streaks[i] >= streaks[(i + 1) % Steps] && streaks[i] > streaks[(i + Steps - 1) % Steps] && streaks[i] >= smallestShare * best)
                .OrderByDescending(i => streaks[i])
                .Take(count)
                .Select(i => Degrees(i) * Math.PI / 180),
        ];
    }

    private static int Degrees(int step) => step * StepDegrees > 90 ? (step * StepDegrees) - 180 : step * StepDegrees;

    private static double Streakiness(TurnedProfiles profiles)
    {
        double sum = 0;
        long count = 0;
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            for (var row = Gap; row < profiles.Rows; row++)
            {
                var here = profiles.Colour(strip, row);
                var above = profiles.Colour(strip, row - Gap);
                var square = Square(here[0] - above[0]) + Square(here[1] - above[1]) + Square(here[2] - above[2]);
                if (!double.IsNaN(square))
                {
                    sum += square;
                    count++;
                }
            }
        }

        return count == 0 ? 0 : sum / count;
    }

    private static double Square(double value) => value * value;
}
