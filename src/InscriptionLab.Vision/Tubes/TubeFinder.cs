using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Models;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// Finds the draw tubes in a photo. A small network says where tube wall and its outlines are; edges measured in the photo say it to a fraction of a
/// pixel. Without the network edges alone decide, which a shadow or a collar can mislead.
/// </summary>
public sealed class TubeFinder : IDisposable
{
    private const string Stage = "tube";

    /// <summary>Directions tried from the network's outlines and from light and shade, and how strong one must be beside the best.</summary>
    private const int RegionDirectionCount = 3;
    private const double RegionDirectionShare = 0.25;
    private const int StreakDirectionCount = 2;
    private const double StreakDirectionShare = 0.3;

    /// <summary>Longer side of the copy that all smaller ones are made from, in working sides: at 2, what the first shrinking blurs is beyond the working picture.</summary>
    private const int SidesOfCopy = 2;

    /// <summary>Directions nearer than this are one: 7 degrees, the steepest slope looked at.</summary>
    private const double SameDirection = 0.12;

    private readonly TubeFinderOptions _options;
    /// <summary>Steps in which a marked line is followed to see whether it lies in the photo.</summary>
    private const int OutlineProbes = 256;

    private readonly OutlineHypotheses _hypotheses;
    private readonly TubeNetwork? _network;

    /// <summary>Makes the stage.</summary>
    /// <param name="options">How to look; null for the defaults.</param>
    /// <param name="shelf">The models folder with the tube network; null, or a folder without it, to go by edges alone.</param>
    /// <exception cref="InscriptionLabException">The model is absent, changed or of another shape.</exception>
    public TubeFinder(TubeFinderOptions? options = null, ModelShelf? shelf = null)
    {
        _options = options ?? new TubeFinderOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.WorkingSide, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.DirectionSide, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Strips, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SmallestDiameter, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SteepestSlope, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Focal.Usual, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Focal.Spread, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Focal.UsualDistance, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.Focal.DistanceSpread, nameof(options));
        _hypotheses = new OutlineHypotheses(_options);
        _network = shelf?.Lists(TubeNetwork.File) == true ? new TubeNetwork(shelf) : null;
    }

    /// <inheritdoc/>
    public void Dispose() => _network?.Dispose();

    /// <summary>Finds the tube that most looks like a lettered draw tube.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    public Outcome<Tube> Run(Photo photo, CancellationToken cancel) =>
        Find(photo, cancel).Then<Tube>(tubes => new Outcome<Tube>.Found(tubes[0]));

    /// <summary>Makes the tube from outlines given by hand.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="first">One outline.</param>
    /// <param name="second">The other outline.</param>
    public Outcome<Tube> Run(Photo photo, PixelSegment first, PixelSegment second)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var tube = new TubeBuilder(_options).Build(photo, first, second, Probability.One, ["The outlines were marked by hand."]);
        if (tube is not null && !new[] { first, second, tube.Axis }.Any(line => Crosses(photo, line)))
        {
            return new Outcome<Tube>.Declined(new Refusal(
                Stage,
                string.Create(CultureInfo.InvariantCulture, $"The two outlines marked lie outside the photo, which has {photo.Gray.Width} x {photo.Gray.Height} pixels."),
                "Mark the two long sides of the tube in pixels of the upright photo, each with one line from end to end."));
        }

        return tube is null
            ? new Outcome<Tube>.Declined(new Refusal(
                Stage,
                "The two outlines marked bound no tube: they cross or coincide.",
                "Mark the two long sides of the tube, each with one line from end to end."))
            : new Outcome<Tube>.Found(tube);
    }

    /// <summary>Finds all tubes, the likeliest lettered draw tube first; empty where there is none.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    public ImmutableArray<Tube> RunAll(Photo photo, CancellationToken cancel) =>
        Find(photo, cancel) is Outcome<ImmutableArray<Tube>>.Found found ? found.Value : [];

    /// <summary>Finds all tubes, the likeliest lettered draw tube first, or says why there is none.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="cancel">Stops the work.</param>
    public Outcome<ImmutableArray<Tube>> Find(Photo photo, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        using var copy = SmallCopy.Of(photo.Colour, SidesOfCopy * _options.WorkingSide);
        var maps = _network?.Look(copy);
        using var small = LabPicture.From(copy, _options.DirectionSide);
        using var picture = LabPicture.From(copy, _options.WorkingSide);
        var linear = new LinearLight(photo.Colour);
        var found = new List<(Tube Tube, double Score)>();
        foreach (var direction in Directions(small, maps))
        {
            cancel.ThrowIfCancellationRequested();
            found.AddRange(_hypotheses.Along(direction, photo, picture, linear, maps));
        }

        var kept = new List<Tube>();
        foreach (var (tube, _) in found.Where(item => item.Tube.Confidence >= _options.SmallestConfidence).OrderByDescending(item => item.Score))
        {
            if (!kept.Exists(better => Meet(better, tube)))
            {
                kept.Add(tube);
            }
        }

        return kept.Count > 0
            ? new Outcome<ImmutableArray<Tube>>.Found([.. kept])
            : new Outcome<ImmutableArray<Tube>>.Declined(WhyNone(maps));
    }

    /// <summary>Whether some point of a line lies in the photo.</summary>
    private static bool Crosses(Photo photo, PixelSegment line)
    {
        for (var step = 0; step <= OutlineProbes; step++)
        {
            var share = (double)step / OutlineProbes;
            var (x, y) = (line.Start.X + (share * (line.End.X - line.Start.X)), line.Start.Y + (share * (line.End.Y - line.Start.Y)));
            if (x >= 0 && y >= 0 && x <= photo.Gray.Width - 1 && y <= photo.Gray.Height - 1)
            {
                return true;
            }
        }

        return false;
    }

    private static IReadOnlyList<double> Directions(LabPicture small, TubeMaps? maps)
    {
        var streaks = AxisDirection.Search(small, StreakDirectionCount, StreakDirectionShare);
        if (maps is null)
        {
            return streaks;
        }

        var directions = new List<double>();
        foreach (var direction in RegionDirections.Search(maps, RegionDirectionCount, RegionDirectionShare).Concat(streaks))
        {
            if (!directions.Exists(other => Math.Abs(Math.IEEERemainder(other - direction, Math.PI)) < SameDirection))
            {
                directions.Add(direction);
            }
        }

        return directions;
    }

    /// <summary>Two tubes in one place: the middle of either lies on the other.</summary>
    private static bool Meet(Tube one, Tube other) => Covers(one, other) || Covers(other, one);

    private static bool Covers(Tube tube, Tube other)
    {
        var middle = new PixelPoint((other.Axis.Start.X + other.Axis.End.X) / 2, (other.Axis.Start.Y + other.Axis.End.Y) / 2);
        var (x, y) = (tube.Axis.End.X - tube.Axis.Start.X, tube.Axis.End.Y - tube.Axis.Start.Y);
        var along = (((middle.X - tube.Axis.Start.X) * x) + ((middle.Y - tube.Axis.Start.Y) * y)) / ((x * x) + (y * y));
        return along is > 0 and < 1 && tube.Shows(middle);
    }

    private static Refusal WhyNone(TubeMaps? maps) => maps is not null && maps.WallShare() >= OneTubeShare
        ? new Refusal(
            Stage,
            "A tube can be seen, but not both of its long sides: one is out of the picture, covered, or too blurred to be measured.",
            "Photograph the tube so that both of its long sides are in the picture, or mark the two sides by hand.")
        : new Refusal(
            Stage,
            "No tube can be made out: no two straight outlines with a rounded metal surface between them were found.",
            "Photograph the tube so that both of its long sides show against a plain background of another colour, or mark the two sides by hand.");

    /// <summary>Share of the picture that must look like tube wall before a tube is said to be there.</summary>
    private const double OneTubeShare = 0.05;
}
