using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Pairs edges into tubes by the region between them: all of it tube wall, none of it beyond, over the strips where that holds.</summary>
internal static class RegionPairSearch
{
    /// <summary>Largest difference of slope between the two outlines of a tube.</summary>
    private const double LargestConvergence = 0.15;

    /// <summary>Fewest strips over which the region must agree.</summary>
    private const int FewestStrips = 3;

    /// <summary>Agreement (intersection over union) of a strip above which it speaks for the pair.</summary>
    private const double Neutral = 0.5;

    /// <summary>Width of the band beyond an outline in which there must be no more wall, as a share of the diameter.</summary>
    private const double BandBeyond = 0.25;

    /// <summary>Rows of a pair in the picture below which a strip tells nothing.</summary>
    private const int FewestRows = 6;

    /// <summary>Weight of the outlines' evidence beside the region's.</summary>
    private const double EdgeWeight = 0.5;

    /// <summary>Mean agreement below which there is no tube.</summary>
    private const double SmallestAgreement = 0.62;

    /// <summary>Rows of a smaller tube that may lie within a better one's, as a share, before both are one.</summary>
    private const double LargestOverlap = 0.3;

    /// <summary>Gives the tubes, best first, no two of them in one place.</summary>
    /// <param name="evidence">Evidence of edges, the network's outlines weighed in.</param>
    /// <param name="region">The network's maps.</param>
    /// <param name="lines">Edges found.</param>
    /// <param name="smallestDiameter">Smallest distance, rows.</param>
    internal static IReadOnlyList<OutlinePair> Find(EdgeEvidence evidence, RegionEvidence region, IReadOnlyList<EdgeLine> lines, double smallestDiameter)
    {
        var pairs = new List<OutlinePair>();
        foreach (var upper in lines)
        {
            foreach (var lower in lines)
            {
                if (Pair(evidence, region, upper, lower, smallestDiameter) is { } pair)
                {
                    pairs.Add(pair);
                }
            }
        }

        var kept = new List<OutlinePair>();
        foreach (var pair in pairs.OrderByDescending(pair => pair.Score))
        {
            if (!kept.Exists(better => SamePlace(evidence.Profiles, better, pair)))
            {
                kept.Add(pair);
            }
        }

        return kept;
    }

    private static OutlinePair? Pair(EdgeEvidence evidence, RegionEvidence region, EdgeLine upper, EdgeLine lower, double smallestDiameter)
    {
        var middles = evidence.Profiles.Middles;
        var diameter = lower.Middle - upper.Middle;
        if (diameter < smallestDiameter || Math.Abs(upper.Slope - lower.Slope) > LargestConvergence)
        {
            return null;
        }

        var agreements = new double[middles.Length];
        for (var strip = 0; strip < middles.Length; strip++)
        {
            agreements[strip] = Agreement(region, strip, upper.At(middles[strip]), lower.At(middles[strip]));
        }

        var (first, last) = BestRun(agreements);
        var known = Enumerable.Range(first, Math.Max(0, last - first + 1)).Where(strip => !double.IsNaN(agreements[strip])).ToList();
        if (known.Count < FewestStrips || Math.Max(first, Math.Max(upper.First, lower.First)) > Math.Min(last, Math.Min(upper.Last, lower.Last)))
        {
            return null;
        }

        var agreement = known.Average(strip => agreements[strip]);
        if (agreement < SmallestAgreement)
        {
            return null;
        }

        var score = (known.Sum(strip => agreements[strip] - Neutral) / middles.Length) + (EdgeWeight * (evidence.Sum(upper, first, last) + evidence.Sum(lower, first, last)));
        return new OutlinePair(upper, lower, first, last, score, agreement);
    }

    /// <summary>Wall between the outlines over all wall and all room between them, in one strip; not a number where the picture shows too little of it.</summary>
    private static double Agreement(RegionEvidence region, int strip, double upper, double lower)
    {
        var (wall, rows) = region.Between(strip, upper, lower);
        if (rows < FewestRows)
        {
            return double.NaN;
        }

        var band = BandBeyond * (lower - upper);
        var beyond = region.Between(strip, upper - band, upper).Wall + region.Between(strip, lower, lower + band).Wall;
        return wall / (rows + beyond);
    }

    private static (int First, int Last) BestRun(double[] agreements)
    {
        var (sum, best, start, first, last) = (0.0, 0.0, 0, 0, -1);
        for (var strip = 0; strip < agreements.Length; strip++)
        {
            if (sum <= 0)
            {
                (sum, start) = (0, strip);
            }

            sum += double.IsNaN(agreements[strip]) ? 0 : agreements[strip] - Neutral;
            if (sum > best)
            {
                (best, first, last) = (sum, start, strip);
            }
        }

        return (first, last);
    }

    private static bool SamePlace(TurnedProfiles profiles, OutlinePair better, OutlinePair pair)
    {
        var (first, last) = (Math.Max(better.First, pair.First), Math.Min(better.Last, pair.Last));
        double shared = 0;
        double smaller = 0;
        double Height(OutlinePair of, int strip) => of.Lower.At(profiles.Middles[strip]) - of.Upper.At(profiles.Middles[strip]);
        for (var strip = first; strip <= last; strip++)
        {
            var x = profiles.Middles[strip];
            shared += Math.Max(0, Math.Min(better.Lower.At(x), pair.Lower.At(x)) - Math.Max(better.Upper.At(x), pair.Upper.At(x)));
        }

        double Area(OutlinePair of) => Enumerable.Range(of.First, of.Last - of.First + 1).Sum(strip => Height(of, strip));
        smaller = Math.Min(Area(better), Area(pair));
        return shared > LargestOverlap * smaller;
    }
}
