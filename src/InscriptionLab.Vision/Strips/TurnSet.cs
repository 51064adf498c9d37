using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Strips;

/// <summary>
/// Puts photos of one tube, turned about its axis by unknown steps, together to one strip. Neighbouring photos are laid flat and fitted by their scratches,
/// stains and lettering; where they go all the way round, what is left over of the full turn is spread over the steps.
/// </summary>
public sealed class TurnSet
{
    private const string Stage = "turn";

    /// <summary>Pieces along the tube in which seams are looked at.</summary>
    private const int SeamPieces = 3;

    /// <summary>Misfit in radii above which a piece was fitted to something else.</summary>
    private const double LargestMisfit = 0.15;

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

    /// <summary>Puts the photos together.</summary>
    /// <param name="photos">Photos in the order in which the tube was turned; at least two.</param>
    /// <param name="tubes">The tube found in each.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The numbers of photos and tubes differ, or there are fewer than two.</exception>
    public Outcome<TurnMosaic> Run(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(tubes);
        if (photos.Count != tubes.Count || photos.Count < 2)
        {
            throw new ArgumentException("A set needs at least two photos, and one tube for each.", nameof(tubes));
        }

        var range = AxialRange.Of(photos, tubes, _options.HalfArc.Radians);
        var details = new DetailPicture[photos.Count];
        for (var i = 0; i < photos.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            details[i] = Detail(photos[i], tubes[i], range);
        }

        var steps = new List<TurnStep>();
        for (var i = 0; i + 1 < photos.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var step = Step(details[i], details[i + 1]);
            if (step.Agreement < _options.SmallestAgreement)
            {
                return Refuse(photos[i], photos[i + 1]);
            }

            steps.Add(step);
        }

        var closing = photos.Count > 2 ? Step(details[^1], details[0]) : null;
        var closure = Closure(steps, closing);
        var views = Place(tubes, steps, closure, range);
        return new Outcome<TurnMosaic>.Found(new TurnMosaicBuilder(_options).Build(photos, tubes, views, range, closure, SeamError(details, steps, closure)));
    }

    private static Outcome<TurnMosaic> Refuse(Photo one, Photo other) => new Outcome<TurnMosaic>.Declined(new Refusal(
        Stage,
        $"{one.File} and {other.File} cannot be fitted together: too little of the tube shows in both.",
        "Turn the tube by less than an eighth of a turn between photos and keep camera and lamp where they are, then list the photos in the order in which you took them."));

    /// <summary>Adds the step that closes the circle where it fits a full turn.</summary>
    private Angle? Closure(List<TurnStep> steps, TurnStep? closing)
    {
        if (closing is null || closing.Agreement < _options.SmallestAgreement)
        {
            return null;
        }

        var sum = steps.Sum(step => step.Turn) + closing.Turn;
        var turns = Math.Round(sum / (2 * Math.PI));
        var rest = sum - (turns * 2 * Math.PI);
        return turns != 0 && Math.Abs(rest) <= _options.LargestClosure.Radians ? Angle.FromRadians(rest) : null;
    }

    private ImmutableArray<TurnView> Place(IReadOnlyList<Tube> tubes, List<TurnStep> steps, Angle? closure, (double From, double To) range)
    {
        var perStep = (closure?.Radians ?? 0) / (steps.Count + 1);
        var views = ImmutableArray.CreateBuilder<TurnView>(tubes.Count);
        double turn = 0;
        double axial = 0;
        for (var i = 0; i < tubes.Count; i++)
        {
            if (i > 0)
            {
                turn += steps[i - 1].Turn - perStep;
                axial += steps[i - 1].Axial;
            }

            var map = new CylinderStripMap(tubes[i].Pose, _options.ComparingScale, range.From + axial, Angle.FromRadians(turn));
            views.Add(new TurnView(i, Angle.FromRadians(turn), axial, i == 0 ? 1 : steps[i - 1].Agreement, map));
        }

        return views.ToImmutable();
    }

    private DetailPicture Detail(Photo photo, Tube tube, (double From, double To) range)
    {
        var map = new CylinderStripMap(tube.Pose, _options.ComparingScale, range.From, Angle.FromRadians(-_options.HalfArc.Radians));
        var width = 1 + (int)((range.To - range.From) * _options.ComparingScale);
        var height = 1 + (int)(2 * _options.HalfArc.Radians * _options.ComparingScale);
        return DetailPicture.From(PhotoSampler.Sample(photo, map, width, height), map, photo.Gray.Width, photo.Gray.Height);
    }

    /// <summary>Fits each pair of neighbours again, third by third along the tube, and gives the root mean square of what is left over, in radii.</summary>
    private double SeamError(DetailPicture[] details, List<TurnStep> steps, Angle? closure)
    {
        var perStep = (closure?.Radians ?? 0) / (steps.Count + 1);
        double sum = 0;
        var count = 0;
        for (var i = 0; i < steps.Count; i++)
        {
            for (var piece = 0; piece < SeamPieces; piece++)
            {
                var step = Step(details[i].Only(piece, SeamPieces), details[i + 1]);
                var turn = step.Turn - steps[i].Turn + perStep;
                var axial = step.Axial - steps[i].Axial;
                var square = (turn * turn) + (axial * axial);
                if (step.Agreement >= _options.SmallestAgreement && square < LargestMisfit * LargestMisfit)
                {
                    sum += square;
                    count++;
                }
            }
        }

        return count == 0 ? Math.Abs(perStep) : Math.Sqrt(sum / count);
    }

    private TurnStep Step(DetailPicture first, DetailPicture second)
    {
        var overlap = _options.SmallestOverlap.Radians / (2 * _options.HalfArc.Radians) / 2;
        var most = Math.Min((int)(_options.LargestAxialShift * _options.ComparingScale), first.Width / 2);
        var (x, y, agreement) = MaskedCorrelation.Best(first, second, most, overlap);
        return new TurnStep(y / _options.ComparingScale, x / _options.ComparingScale, agreement);
    }
}
