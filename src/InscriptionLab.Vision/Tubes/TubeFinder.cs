using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Finds the draw tube in a photo: two straight outlines with light and shade running along the tube between them.</summary>
public sealed class TubeFinder
{
    private const string Stage = "tube";

    /// <summary>Directions tried, and the streakiness a second direction must have beside the best.</summary>
    private const int Directions = 2;
    private const double SecondDirection = 0.3;

    /// <summary>Rounds in which the direction is bettered, and the slope under which it is good enough.</summary>
    private const int DirectionRounds = 3;
    private const double LevelEnough = 0.01;

    /// <summary>Lines that vote on the direction.</summary>
    private const int Voters = 6;

    /// <summary>How far a silhouette may lie from its coarse line, in working pixels.</summary>
    private const double CoarseError = 4;

    private readonly TubeFinderOptions _options;

    /// <summary>Makes the stage.</summary>
    /// <param name="options">How to look; null for the defaults.</param>
    public TubeFinder(TubeFinderOptions? options = null)
    {
        _options = options ?? new TubeFinderOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.WorkingSide, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.DirectionSide, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Strips, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SmallestDiameter, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SteepestSlope, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.AssumedFocal, nameof(options));
    }

    /// <summary>Finds the tube that most looks like a lettered draw tube.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    public Outcome<Tube> Run(Photo photo, CancellationToken cancel)
    {
        var tubes = RunAll(photo, cancel);
        return tubes.IsEmpty
            ? new Outcome<Tube>.Declined(new Refusal(
                Stage,
                "No tube can be made out: no two straight outlines with a rounded metal surface between them were found.",
                "Photograph the tube so that both of its long sides show against a plain background of another colour, or mark the two sides by hand."))
            : new Outcome<Tube>.Found(tubes[0]);
    }

    /// <summary>Makes the tube from outlines given by hand.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="first">One outline.</param>
    /// <param name="second">The other outline.</param>
    public Outcome<Tube> Run(Photo photo, PixelSegment first, PixelSegment second)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var tube = new TubeBuilder(_options).Build(photo, first, second, Probability.One, ["The outlines were marked by hand."]);
        return tube is null
            ? new Outcome<Tube>.Declined(new Refusal(
                Stage,
                "The two outlines marked bound no tube: they cross or coincide.",
                "Mark the two long sides of the tube, each with one line from end to end."))
            : new Outcome<Tube>.Found(tube);
    }

    /// <summary>Finds all tubes, the one that most looks like a lettered draw tube first; empty where there is none.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    public ImmutableArray<Tube> RunAll(Photo photo, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        using var small = LabPicture.From(photo.Colour, _options.DirectionSide);
        using var picture = LabPicture.From(photo.Colour, _options.WorkingSide);
        using var linear = LinearPicture.From(photo.Colour);
        var found = new List<(Tube Tube, double Score)>();
        foreach (var direction in AxisDirection.Search(small, Directions, SecondDirection))
        {
            cancel.ThrowIfCancellationRequested();
            var (evidence, lines) = Level(picture, direction);
            foreach (var pair in OutlinePairSearch.Find(evidence, lines, _options.SmallestDiameter * _options.WorkingSide).Take(1))
            {
                if (Refine(photo, linear, evidence.Profiles, pair, picture.Scale) is { } tube)
                {
                    found.Add((tube, pair.Score));
                }
            }
        }

        return [.. found.OrderByDescending(item => item.Score).Where(item => item.Tube.Confidence >= _options.SmallestConfidence).Select(item => item.Tube)];
    }

    /// <summary>Turns the picture until its clearest edges lie level.</summary>
    private (EdgeEvidence Evidence, IReadOnlyList<EdgeLine> Lines) Level(LabPicture picture, double direction)
    {
        var round = 0;
        while (true)
        {
            var evidence = EdgeEvidence.From(TurnedProfiles.From(picture, direction, _options.Strips));
            var lines = EdgeLineSearch.Find(evidence, _options.SteepestSlope);
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

    private Tube? Refine(Photo photo, LinearPicture linear, TurnedProfiles profiles, OutlinePair pair, double scale)
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
        var confidence = Math.Clamp(pair.Score / (2 * EdgeEvidence.Clear * share), 0, 1) * Math.Sqrt(upper.Support * lower.Support);
        return new TubeBuilder(_options).Build(photo, upper.Line, lower.Line, Probability.From(confidence), []);
    }
}
