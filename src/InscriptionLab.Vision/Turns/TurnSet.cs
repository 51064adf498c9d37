using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Turns;

/// <summary>
/// Puts photos of one tube, turned about its axis by unknown steps, together to one strip. The photos are laid flat and fitted by their scratches,
/// stains and lettering, each with each; where they go all the way round, what is left over of the full turn is spread over the steps.
/// </summary>
public sealed class TurnSet
{
    private const string Stage = "turn";

    /// <summary>Pieces along the tube in which seams are looked at.</summary>
    private const int SeamPieces = 3;

    private readonly TurnSetOptions _options;

    /// <summary>Makes the stage.</summary>
    /// <param name="options">How to fit; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public TurnSet(TurnSetOptions? options = null)
    {
        _options = options ?? new TurnSetOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.ComparingScale, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.HalfArc.Radians, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.LargestAxialShift, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.MaximumSide, nameof(options));
    }

    /// <summary>Fits each photo to each other.</summary>
    /// <param name="photos">Photos in any order.</param>
    /// <param name="tubes">The tube found in each; the same one for all where camera and rest stayed where they were.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The fits that stand out.</returns>
    /// <exception cref="ArgumentException">The numbers of photos and tubes differ, or there are fewer than two.</exception>
    public ImmutableArray<TurnMatch> Match(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, CancellationToken cancel)
    {
        using var registrar = Registrar(photos, tubes, cancel);
        return registrar.Matches(cancel);
    }

    /// <summary>Puts the photos together.</summary>
    /// <param name="photos">Photos in any order; at least two.</param>
    /// <param name="tubes">The tube found in each; the same one for all where camera and rest stayed where they were.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The strip, from the photos that hang together, at least two; otherwise why not.</returns>
    /// <exception cref="ArgumentException">The numbers of photos and tubes differ, or there are fewer than two.</exception>
    public Outcome<TurnMosaic> Run(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, CancellationToken cancel) => Run(photos, tubes, null, cancel);

    /// <summary>Puts photos together whose fits are known.</summary>
    /// <param name="photos">Photos in any order; at least two.</param>
    /// <param name="tubes">The tube found in each.</param>
    /// <param name="matches">Fits of pairs, from <see cref="Match"/>; null to find them.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The strip, from the photos that hang together, at least two; otherwise why not.</returns>
    /// <exception cref="ArgumentException">The numbers of photos and tubes differ, or there are fewer than two.</exception>
    public Outcome<TurnMosaic> Run(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, ImmutableArray<TurnMatch>? matches, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photos);
        if (photos.Count > TurnMosaicBuilder.MostPhotos)
        {
            return TooMany(photos.Count);
        }

        using var registrar = Registrar(photos, tubes, cancel);
        var (places, used, closure) = TurnSolver.Solve(photos.Count, matches ?? registrar.Matches(cancel), _options.LargestClosure.Radians);
        if (used.IsEmpty)
        {
            return Refuse(photos[0]);
        }

        var views = Enumerable.Range(0, photos.Count).Where(i => places[i] is not null).Select(i => View(i, places[i]!.Value, tubes[i], registrar.Range, used));
        return new Outcome<TurnMosaic>.Found(new TurnMosaicBuilder(_options).Build(photos, tubes, [.. views], registrar.Range, closure, SeamError(registrar, places, used)));
    }

    private TurnRegistrar Registrar(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(tubes);
        return photos.Count == tubes.Count && photos.Count >= 2
            ? new TurnRegistrar(_options, photos, tubes, cancel)
            : throw new ArgumentException("A set needs at least two photos, and one tube for each.", nameof(tubes));
    }

    private static Outcome<TurnMosaic> Refuse(Photo photo) => new Outcome<TurnMosaic>.Declined(new Refusal(
        Stage,
        $"{photo.File} cannot be fitted to the other photos: too little of the tube shows in both, or nothing on it tells its turn.",
        "Turn the tube by less than an eighth of a turn between photos and keep camera and lamp where they are."));

    private static Outcome<TurnMosaic> TooMany(int photos) => new Outcome<TurnMosaic>.Declined(new Refusal(
        Stage,
        string.Create(CultureInfo.InvariantCulture, $"The set has {photos} photos, and a strip is put together from {TurnMosaicBuilder.MostPhotos} at most."),
        "Leave photos out: one every ten degrees shows all of the tube several times."));

    private TurnView View(int photo, (double Turn, double Axial) place, Tube tube, (double From, double To) range, ImmutableArray<TurnMatch> used) => new(
        photo,
        Angle.FromRadians(place.Turn),
        place.Axial,
        used.Where(match => match.First == photo || match.Second == photo).Max(match => match.Agreement),
        new CylinderStripMap(tube.Pose, _options.ComparingScale, range.From + place.Axial, Angle.FromRadians(place.Turn)));

    /// <summary>Fits each pair again, third by third along the tube, and gives the root mean square of what is left over, in radii; from the median, over which a few parts that fit elsewhere have no power (the median of a sum of two normal squares is its mean times ln 2).</summary>
    private static double SeamError(TurnRegistrar registrar, ImmutableArray<(double Turn, double Axial)?> places, ImmutableArray<TurnMatch> used)
    {
        var squares = new List<double>();
        foreach (var match in used)
        {
            var (first, second) = (places[match.First]!.Value, places[match.Second]!.Value);
            squares.AddRange(Enumerable.Range(0, SeamPieces).Select(piece => registrar.Again(match, piece, SeamPieces)).OfType<TurnMatch>().Append(match).Select(again =>
            {
                var turn = Math.IEEERemainder(second.Turn - first.Turn - again.Turn.Radians, 2 * Math.PI);
                var axial = second.Axial - first.Axial - again.AxialShift;
                return (turn * turn) + (axial * axial);
            }));
        }

        squares.Sort();
        return Math.Sqrt(squares[squares.Count / 2] / Math.Log(2));
    }
}
