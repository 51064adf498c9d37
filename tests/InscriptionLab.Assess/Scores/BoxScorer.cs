using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.Assess.Scores;

/// <summary>Compares the boxes of the letters read with the boxes of the letters cut.</summary>
internal static class BoxScorer
{
    /// <summary>Pixels taken off every truth coordinate: truth counts from the corner of the top-left pixel, the program from its centre.</summary>
    internal const double TruthShift = 0.5;

    /// <summary>Gives, for each letter cut that can be seen, the largest overlap with a letter read (0 to 1), each letter read counting once; best overlaps go first.</summary>
    internal static ImmutableArray<double> Overlaps(TruthPhoto truth, PhotoRecord record)
    {
        var cut = truth.Letters.Where(letter => !letter.Hidden && letter.Quad.Length == 4)
            .Select(letter => letter.Quad.Select(p => (p[0] - TruthShift, p[1] - TruthShift)).ToList()).ToList();
        var read = record.Lines.SelectMany(line => line.Letters).Select(letter => letter.Quad.Select(p => (p[0], p[1])).ToList()).ToList();
        var meetings = new List<(double Overlap, int Cut, int Read)>();
        for (var c = 0; c < cut.Count; c++)
        {
            for (var r = 0; r < read.Count; r++)
            {
                var overlap = ConvexPatch.Overlap(cut[c], read[r]);
                if (overlap > 0)
                {
                    meetings.Add((overlap, c, r));
                }
            }
        }

        var best = new double[cut.Count];
        var (cutUsed, readUsed) = (new HashSet<int>(), new HashSet<int>());
        foreach (var (overlap, c, r) in meetings.OrderByDescending(meeting => meeting.Overlap))
        {
            if (!cutUsed.Contains(c) && !readUsed.Contains(r))
            {
                best[c] = overlap;
                cutUsed.Add(c);
                readUsed.Add(r);
            }
        }

        return [.. best];
    }
}
