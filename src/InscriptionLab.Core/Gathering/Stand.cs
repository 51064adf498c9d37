using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Gathering;

/// <summary>Photos taken from one place of a tube that stayed where it was: most of them show the same outlines, and those serve for all.</summary>
public sealed class Stand
{
    private readonly GathererOptions _options;

    /// <summary>Makes the judgement.</summary>
    /// <param name="options">How far outlines may differ; null for the defaults.</param>
    public Stand(GathererOptions? options = null) => _options = options ?? new GathererOptions();

    /// <summary>Gives the tube whose outlines most photos agree on; null where fewer than half of the tubes found agree.</summary>
    /// <param name="photos">Photos in any order.</param>
    public Tube? TubeOf(IReadOnlyList<GatheredPhoto> photos)
    {
        ArgumentNullException.ThrowIfNull(photos);
        return Agreed([.. photos.Select(photo => photo.Tube).OfType<Tube>()])?.Tube;
    }

    /// <summary>
    /// Gives the tube of one view under several lamps, as long as all agreeing photos together show it. Where no tube as a whole has most photos behind it, each outline is put to
    /// the vote by itself: a lamp may hide one side of the tube in one photo and the other side in the next. Null where that leaves an outline without two photos behind it.
    /// </summary>
    /// <param name="photos">Photos in any order.</param>
    public Tube? ElectedTubeOf(IReadOnlyList<GatheredPhoto> photos)
    {
        ArgumentNullException.ThrowIfNull(photos);
        var tubes = photos.Select(photo => photo.Tube).OfType<Tube>().ToList();
        return tubes.Count == 0 ? null
            : Agreed(tubes) is { } agreed ? TubeOutlines.Extended(agreed.Tube, agreed.Same)
            : Elected(tubes, 0) is { } first && Elected(tubes, 1) is { } second ? TubeOutlines.Of(tubes.MaxBy(tube => tube.Confidence)!, first, second, tubes)
            : null;
    }

    private (Tube Tube, List<Tube> Same)? Agreed(List<Tube> tubes)
    {
        var votes = tubes.Select(tube => (Tube: tube, Same: tubes.Where(other => AreSame(tube, other)).ToList())).OrderByDescending(vote => vote.Same.Count).ThenByDescending(vote => vote.Tube.Confidence).ToList();
        return votes.Count > 0 && votes[0].Same.Count >= 2 && 2 * votes[0].Same.Count > tubes.Count ? votes[0] : null;
    }

    /// <summary>The outline on one side that most tubes have, two at least and more than any other.</summary>
    private PixelSegment? Elected(List<Tube> tubes, int side)
    {
        var votes = tubes.Select(tube => (Outline: tube.Silhouettes[side], Same: tubes.Where(other => AreSame(tube, other, side)).ToList())).OrderByDescending(vote => vote.Same.Count).ThenByDescending(vote => vote.Outline.Length.Pixels).ToList();
        var rival = votes.Skip(1).Where(vote => !votes[0].Same.Exists(tube => tube.Silhouettes[side] == vote.Outline)).Select(vote => vote.Same.Count).DefaultIfEmpty(0).Max();
        return votes[0].Same.Count >= 2 && votes[0].Same.Count > rival ? votes[0].Outline : null;
    }

    private bool AreSame(Tube one, Tube other, int side) => Apart(one.Silhouettes[side], other.Silhouettes[side]) <= one.Diameter.Pixels * _options.SameOutline;

    /// <summary>Tells whether a photo shows clearly less of the length of a tube than another.</summary>
    public bool IsShort(Tube tube, Tube other)
    {
        ArgumentNullException.ThrowIfNull(tube);
        ArgumentNullException.ThrowIfNull(other);
        return tube.Axis.Length.Pixels < _options.ShortLength * other.Axis.Length.Pixels;
    }

    /// <summary>Tells whether two tubes have the same outlines.</summary>
    public bool AreSame(Tube one, Tube other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return AreSame(one, other, 0) && AreSame(one, other, 1);
    }

    /// <summary>The larger distance of the ends of one outline from the straight line through the other.</summary>
    private static double Apart(PixelSegment one, PixelSegment other) => Math.Max(FromLine(one.Start, other), FromLine(one.End, other));

    private static double FromLine(PixelPoint point, PixelSegment line)
    {
        var (sin, cos) = Math.SinCos(line.Direction.Radians);
        return Math.Abs(((point.Y - line.Start.Y) * cos) - ((point.X - line.Start.X) * sin));
    }
}
