using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Finds the straight edges that run nearly along the tube, each over the piece of the length where it shows best.</summary>
internal static class EdgeLineSearch
{
    /// <summary>Smallest score of a line: a clear edge over an eighth of the length.</summary>
    private const double SmallestScore = 0.08;

    /// <summary>Distance in rows within which two lines are one.</summary>
    private const double SameLine = 5;

    /// <summary>Within this many times <see cref="SameLine"/>, a line that touches a better one at an end is the same edge seen askew.</summary>
    private const double Askew = 5;

    /// <summary>Within this many times <see cref="SameLine"/>, a much weaker line is the flank of a better one.</summary>
    private const double Flank = 3;

    /// <summary>What counts as much weaker.</summary>
    private const double FlankShare = 0.6;

    /// <summary>Most lines that are kept.</summary>
    private const int MostLines = 48;

    /// <summary>Gives the lines, best first.</summary>
    /// <param name="evidence">Evidence of edges, strip by strip.</param>
    /// <param name="steepest">Steepest slope looked at, rows per column.</param>
    internal static IReadOnlyList<EdgeLine> Find(EdgeEvidence evidence, double steepest)
    {
        var profiles = evidence.Profiles;
        var half = profiles.Width / 2.0;
        var slopes = (2 * (int)Math.Ceiling(steepest * half)) + 1;
        var rise = (slopes / 2) + 1;
        var promises = Enumerable.Range(0, profiles.Strips).Select(strip => evidence.Promise(strip, rise)).ToArray();
        var best = new List<EdgeLine>();
        for (var index = 0; index < slopes; index++)
        {
            var slope = (index - (slopes / 2)) / half;
            var rows = Array.ConvertAll(profiles.Middles, middle => (int)Math.Round(slope * (middle - half)) + rise);
            for (var row = 0; row < profiles.Rows; row++)
            {
                var (first, last, sum) = BestPiece(promises, rows, row);
                if (sum / profiles.Strips is var score && score >= SmallestScore)
                {
                    best.Add(new EdgeLine(slope, row, half, first, last, score));
                }
            }
        }

        best.Sort((one, other) => other.Score.CompareTo(one.Score));
        var kept = new List<EdgeLine>();
        foreach (var line in best)
        {
            if (kept.Count == MostLines)
            {
                break;
            }

            if (!kept.Exists(better => SameEdge(profiles, better, line)))
            {
                kept.Add(line);
            }
        }

        return kept;
    }

    /// <summary>The piece of a line with the largest sum of evidence (Bentley, Programming Pearls, 1984, column 8).</summary>
    /// <param name="promises">What each row of each strip promises.</param>
    /// <param name="rows">Row of each strip for a line through row 0.</param>
    /// <param name="row">Row that the line goes through.</param>
    private static (int First, int Last, double Sum) BestPiece(float[][] promises, int[] rows, int row)
    {
        double sum = 0;
        double best = 0;
        var start = 0;
        var first = 0;
        var last = -1;
        for (var strip = 0; strip < promises.Length; strip++)
        {
            if (sum <= 0)
            {
                sum = 0;
                start = strip;
            }

            sum += promises[strip][row + rows[strip]];
            if (sum > best)
            {
                best = sum;
                first = start;
                last = strip;
            }
        }

        return (first, last, best);
    }

    private static bool SameEdge(TurnedProfiles profiles, EdgeLine better, EdgeLine line)
    {
        if (line.Last < better.First || line.First > better.Last)
        {
            return false;
        }

        var one = Math.Abs(line.At(profiles.Middles[better.First]) - better.At(profiles.Middles[better.First]));
        var other = Math.Abs(line.At(profiles.Middles[better.Last]) - better.At(profiles.Middles[better.Last]));
        var near = Math.Min(one, other);
        var far = Math.Max(one, other);
        return (near < SameLine && far < Askew * SameLine) || (far < Flank * SameLine && line.Score < FlankShare * better.Score);
    }
}
