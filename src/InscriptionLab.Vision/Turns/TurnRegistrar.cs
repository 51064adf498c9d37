using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.Vision.Turns;

/// <summary>
/// Fits photos of a tube to each other, each with each, in whatever order they were taken: both are laid flat and compared by their scratches, stains and
/// lettering at every turn. Where camera, lamp and rest stayed where they were, what most photos show at the same place does not turn with the tube
/// (shadows, reflections, collars) and is taken out first.
/// </summary>
internal sealed class TurnRegistrar : IDisposable
{
    private readonly TurnSetOptions _options;
    private readonly ImmutableArray<DetailPicture> _details;
    private readonly bool _oneStand;
    private readonly double _smallestAgreement;

    /// <summary>Lays the photos flat.</summary>
    /// <param name="options">How to fit.</param>
    /// <param name="photos">The photos.</param>
    /// <param name="tubes">The tube in each.</param>
    /// <param name="cancel">Stops the work.</param>
    internal TurnRegistrar(TurnSetOptions options, IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, CancellationToken cancel)
    {
        _options = options;
        Range = AxialRange.Of(photos, tubes, options.HalfArc.Radians);
        var width = 1 + (int)((Range.To - Range.From) * options.ComparingScale);
        var height = 1 + (int)(2 * options.HalfArc.Radians * options.ComparingScale);
        var maps = tubes.Select(tube => new CylinderStripMap(tube.Pose, options.ComparingScale, Range.From, Angle.FromRadians(-options.HalfArc.Radians))).ToList();
        var strips = new List<GrayImage>();
        for (var i = 0; i < photos.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            strips.Add(PhotoSampler.Sample(photos[i], maps[i], width, height));
        }

        _oneStand = tubes.All(tube => tube.Pose == tubes[0].Pose);
        // Of two photos alone neither says what stays and what turns.
        _smallestAgreement = photos.Count > 2 ? options.SmallestAgreement : options.SmallestAgreementOfTwo;
        var still = _oneStand && photos.Count > 2 ? Medians(strips) : null;
        _details = [.. strips.Select((strip, i) => DetailPicture.From(strip, maps[i], photos[i].Gray.Width, photos[i].Gray.Height, still))];
    }

    /// <summary>Gets the axial positions that the photos show.</summary>
    internal (double From, double To) Range { get; }

    public void Dispose()
    {
        foreach (var detail in _details)
        {
            detail.Dispose();
        }
    }

    /// <summary>Fits each photo to each later one; fits that do not stand out are left out.</summary>
    internal ImmutableArray<TurnMatch> Matches(CancellationToken cancel)
    {
        var matches = ImmutableArray.CreateBuilder<TurnMatch>();
        for (var i = 0; i < _details.Length; i++)
        {
            for (var j = i + 1; j < _details.Length; j++)
            {
                cancel.ThrowIfCancellationRequested();
                var match = Match(i, j, Best(_details[i], _details[j], null));
                if (match.Clearness >= _options.SmallestClearness && match.Agreement >= _smallestAgreement)
                {
                    matches.Add(match);
                }
            }
        }

        return matches.ToImmutable();
    }

    /// <summary>Fits a part of one photo to another near a known place; null where it does not fit.</summary>
    /// <param name="match">The known place.</param>
    /// <param name="piece">Which part along the tube, from 0.</param>
    /// <param name="pieces">Parts along the tube.</param>
    internal TurnMatch? Again(TurnMatch match, int piece, int pieces)
    {
        using var part = _details[match.First].Only(piece, pieces);
        var fit = Best(part, _details[match.Second], (match.AxialShift * _options.ComparingScale, match.Turn.Radians * _options.ComparingScale));
        return fit.Clearness >= _options.SmallestClearness && fit.Agreement >= _smallestAgreement ? Match(match.First, match.Second, fit) : null;
    }

    private TurnMatch Match(int first, int second, DetailFit fit) => new(
        first, second, Angle.FromRadians(fit.Y / _options.ComparingScale), fit.X / _options.ComparingScale, fit.Agreement, fit.Clearness);

    private DetailFit Best(DetailPicture first, DetailPicture second, (double X, double Y)? near)
    {
        var overlap = _options.SmallestOverlap.Radians / (2 * _options.HalfArc.Radians) / 2;
        var most = Math.Min((int)(_options.LargestAxialShift * _options.ComparingScale), first.Width / 2);
        return MaskedCorrelation.Best(first, second, most, overlap, near, _options.LargestMisfit * _options.ComparingScale, _oneStand ? _options.UsualAxialShiftOnRest * _options.ComparingScale : double.PositiveInfinity);
    }

    private static float[] Medians(List<GrayImage> strips)
    {
        var medians = new float[strips[0].Pixels.Length];
        var levels = new byte[strips.Count];
        for (var at = 0; at < medians.Length; at++)
        {
            for (var i = 0; i < levels.Length; i++)
            {
                levels[i] = strips[i].Pixels[at];
            }

            Array.Sort(levels);
            medians[at] = (levels[levels.Length / 2] + levels[(levels.Length - 1) / 2]) / 2f;
        }

        return medians;
    }
}
