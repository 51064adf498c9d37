using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>One strip put together from photos of a tube that was turned about its axis: X along the axis, Y round the tube, more than once round where the photos close the circle.</summary>
public sealed class TurnMosaic
{
    private readonly byte[] _owners;

    /// <summary>Puts the record together.</summary>
    /// <param name="image">Grey levels; 0 where no photo shows the place well.</param>
    /// <param name="views">The photos' places.</param>
    /// <param name="owners">For each pixel the view that shows it, as an index into <paramref name="views"/>; 255 for none.</param>
    /// <param name="pixelsPerRadius">Strip pixels per tube radius.</param>
    /// <param name="shareSeen">Share of the circumference that is shown, 0 to 1.</param>
    /// <param name="closure">What was left over when the steps were added up to a full turn, or null where the photos do not close the circle.</param>
    /// <param name="seamError">Root mean square misfit of neighbouring photos at their seams, strip pixels.</param>
    /// <exception cref="ArgumentException">The owners do not fit the picture.</exception>
    public TurnMosaic(GrayImage image, ImmutableArray<TurnView> views, byte[] owners, double pixelsPerRadius, double shareSeen, Angle? closure, PixelLength seamError)
    {
        ArgumentNullException.ThrowIfNull(image);
        ArgumentNullException.ThrowIfNull(owners);
        if (owners.Length != image.Width * image.Height)
        {
            throw new ArgumentException("There must be one owner a pixel.", nameof(owners));
        }

        Image = image;
        Views = views;
        _owners = owners;
        PixelsPerRadius = pixelsPerRadius;
        ShareSeen = shareSeen;
        Closure = closure;
        SeamError = seamError;
    }

    /// <summary>Gets the grey levels.</summary>
    public GrayImage Image { get; }

    /// <summary>Gets the photos' places, in the order of the set.</summary>
    public ImmutableArray<TurnView> Views { get; }

    /// <summary>Gets the strip pixels per tube radius.</summary>
    public double PixelsPerRadius { get; }

    /// <summary>Gets the share of the circumference that is shown, 0 to 1.</summary>
    public double ShareSeen { get; }

    /// <summary>Gets what was left over when the steps were added up to a full turn; null where the photos do not close the circle.</summary>
    public Angle? Closure { get; }

    /// <summary>Gets the root mean square misfit of neighbouring photos at their seams, in strip pixels.</summary>
    public PixelLength SeamError { get; }

    /// <summary>Gives the photo and the point in it that a strip point was taken from, or null where no photo shows it.</summary>
    public TurnPoint? Locate(PixelPoint point)
    {
        var x = (int)Math.Clamp(Math.Round(point.X), 0, Image.Width - 1);
        var y = (int)Math.Clamp(Math.Round(point.Y), 0, Image.Height - 1);
        var owner = _owners[(y * Image.Width) + x];
        return owner < Views.Length ? new TurnPoint(Views[owner].PhotoIndex, Views[owner].Map.ToPhoto(point)) : null;
    }

    /// <summary>Gives the view that shows all of a set of strip points best, so that a word can be shown in a single photo: the one that owns most of them.</summary>
    public TurnView? BestView(ImmutableArray<PixelPoint> points) =>
        points.Select(Locate).OfType<TurnPoint>().GroupBy(place => place.PhotoIndex).OrderByDescending(group => group.Count()).Select(group => group.Key).Take(1)
            .Select(index => Views.First(view => view.PhotoIndex == index)).FirstOrDefault();
}
