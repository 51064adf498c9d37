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
        var tubes = photos.Select(photo => photo.Tube).OfType<Tube>().ToList();
        var agreeing = tubes.Select(tube => (Tube: tube, Votes: tubes.Count(other => AreSame(tube, other)))).OrderByDescending(vote => vote.Votes).ThenByDescending(vote => vote.Tube.Confidence).FirstOrDefault();
        return agreeing.Votes >= 2 && 2 * agreeing.Votes > tubes.Count ? agreeing.Tube : null;
    }

    /// <summary>Tells whether two tubes have the same outlines.</summary>
    public bool AreSame(Tube one, Tube other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        var tolerance = one.Diameter.Pixels * _options.SameOutline;
        return one.Silhouettes.Zip(other.Silhouettes, (first, second) => Apart(first, second) <= tolerance).All(near => near);
    }

    /// <summary>The larger distance of the ends of one outline from the straight line through the other.</summary>
    private static double Apart(PixelSegment one, PixelSegment other) => Math.Max(FromLine(one.Start, other), FromLine(one.End, other));

    private static double FromLine(PixelPoint point, PixelSegment line)
    {
        var (sin, cos) = Math.SinCos(line.Direction.Radians);
        return Math.Abs(((point.Y - line.Start.Y) * cos) - ((point.X - line.Start.X) * sin));
    }
}
