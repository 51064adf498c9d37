using System;
using System.Collections.Generic;

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
        double Slope(int index) => (index - (slopes / 2)) / half;

        var best = new List<EdgeLine>();
        for (var slope = 0; slope < slopes; slope++)
        {
            for (var row = 0; row < profiles.Rows; row++)
            {
                var line = BestPiece(evidence, Slope(slope), row, half);
                if (line.Score >= SmallestScore)
                {
                    best.Add(line);
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
    private static EdgeLine BestPiece(EdgeEvidence evidence, double slope, double middle, double half)
    {
        var profiles = evidence.Profiles;
        double sum = 0;
        double best = 0;
        var start = 0;
        var first = 0;
        var last = -1;
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            if (sum <= 0)
            {
                sum = 0;
                start = strip;
            }

            sum += evidence.Promise(strip, (int)Math.Round(middle + (slope * (profiles.Middles[strip] - half))));
            if (sum > best)
            {
                best = sum;
                first = start;
                last = strip;
            }
        }

        return new EdgeLine(slope, middle, half, first, last, best / profiles.Strips);
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
