using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Looks for tubes along one direction: levels the picture on it, pairs the edges, and measures the best pairs in the full-size photo.</summary>
internal sealed class OutlineHypotheses(TubeFinderOptions options)
{
    /// <summary>Rounds in which the direction is bettered, and the slope under which it is good enough.</summary>
    private const int DirectionRounds = 3;
    private const double LevelEnough = 0.01;

    /// <summary>Lines that vote on the direction.</summary>
    private const int Voters = 6;

    /// <summary>Most tubes along one direction: the draws of one telescope, or two that lie side by side.</summary>
    private const int MostTubes = 4;

    /// <summary>Share of the shorter length that two pairs in one place have in common; draws that follow one another meet at a strip or two.</summary>
    private const double SmallestShared = 0.25;

    /// <summary>Score of a pair of clear outlines from side to side.</summary>
    private const double ClearScore = 1.5;

    /// <summary>How far a silhouette may lie from its coarse line, in working pixels.</summary>
    private const double CoarseError = 4;

    /// <summary>Gives the tubes along a direction, best first.</summary>
    internal IEnumerable<(Tube Tube, double Score)> Along(double direction, Photo photo, LabPicture picture, LinearLight linear, TubeMaps? maps)
    {
        var (evidence, lines) = Level(picture, direction, maps);
        var smallest = options.SmallestDiameter * options.WorkingSide;
        var region = maps is null ? null : RegionEvidence.From(evidence.Profiles, maps);
        var taken = new List<OutlinePair>();
        foreach (var pair in OutlinePairSearch.Find(evidence, lines, smallest, region))
        {
            if (taken.Count == MostTubes)
            {
                yield break;
            }

            if (taken.Exists(better => Meet(evidence.Profiles, better, pair)))
            {
                continue;
            }

            taken.Add(pair);
            if (Refine(photo, linear, evidence.Profiles, pair, picture.Scale, maps is not null) is { } tube)
            {
                yield return (tube, pair.Score);
            }
        }
    }

    /// <summary>Two pairs in one place: they share some of their length and the middle of either lies between the outlines of the other.</summary>
    private static bool Meet(TurnedProfiles profiles, OutlinePair one, OutlinePair other)
    {
        var first = Math.Max(one.First, other.First);
        var last = Math.Min(one.Last, other.Last);
        var shared = last - first + 1;
        var shorter = Math.Min(one.Last - one.First, other.Last - other.First) + 1;
        return shared > SmallestShared * shorter && (Covers(one, other, profiles.Middles[(first + last) / 2]) || Covers(other, one, profiles.Middles[(first + last) / 2]));
    }

    private static bool Covers(OutlinePair pair, OutlinePair other, double x)
    {
        var middle = (other.Upper.At(x) + other.Lower.At(x)) / 2;
        return middle > pair.Upper.At(x) && middle < pair.Lower.At(x);
    }

    /// <summary>Turns the picture until its clearest edges lie level.</summary>
    private (EdgeEvidence Evidence, IReadOnlyList<EdgeLine> Lines) Level(LabPicture picture, double direction, TubeMaps? maps)
    {
        var round = 0;
        while (true)
        {
            var evidence = EdgeEvidence.From(TurnedProfiles.From(picture, direction, options.Strips), maps);
            var lines = EdgeLineSearch.Find(evidence, options.SteepestSlope);
            round++;
            if (round == DirectionRounds || lines.Count == 0)
            {
                return (evidence, lines);
            }

            var voters = lines.Take(Voters).ToList();
            var slope = voters.Sum(line => line.Score * line.Slope) / voters.Sum(line => line.Score);
            if (Math.Abs(slope) < LevelEnough)
            {
                return (evidence, lines);
            }

            direction += Math.Atan(slope);
        }
    }

    private Tube? Refine(Photo photo, LinearLight linear, TurnedProfiles profiles, OutlinePair pair, double scale, bool networkLooked)
    {
        PixelSegment InPhoto(EdgeLine line)
        {
            var from = profiles.Middles[pair.First];
            var to = profiles.Middles[pair.Last];
            return new PixelSegment(profiles.ToPhoto(from, line.At(from)), profiles.ToPhoto(to, line.At(to)));
        }

        var reach = CoarseError / scale;
        var upper = OutlineRefiner.Refine(linear, InPhoto(pair.Upper), reach);
        var lower = OutlineRefiner.Refine(linear, InPhoto(pair.Lower), reach);
        if (upper is null || lower is null)
        {
            return null;
        }

        var share = (double)(pair.Last - pair.First + 1) / profiles.Strips;
        var trust = Math.Clamp(pair.Score / (networkLooked ? ClearScore : 2 * EdgeEvidence.Clear * share), 0, 1);
        return new TubeBuilder(options).Build(photo, upper.Line, lower.Line, Probability.From(trust * Math.Sqrt(upper.Support * lower.Support)), []);
    }
}
