using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.Vision.Rings;

/// <summary>Lays the flat ring of a lens cell out straight, so that lettering that runs round it reads from left to right.</summary>
public sealed class RingUnroller
{
    private readonly RingUnrollerOptions _options;

    /// <summary>Makes an unroller.</summary>
    /// <param name="options">How to unroll; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public RingUnroller(RingUnrollerOptions? options = null)
    {
        _options = options ?? new RingUnrollerOptions();
        ArgumentOutOfRangeException.ThrowIfNegative(_options.Overlap.Radians, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.MaximumWidth, nameof(options));
    }

    /// <summary>Unrolls a ring.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="outer">Image of the ring's outer edge.</param>
    /// <param name="inner">Image of its inner edge.</param>
    /// <param name="topsOutward">True to show letters upright whose tops point away from the centre, false for the others.</param>
    /// <returns>The strip: as fine as the photo along the longer axis of the outer ellipse, unless the largest width cuts it short.</returns>
    /// <exception cref="ArgumentException">The inner ellipse is not inside the outer one.</exception>
    public Strip Run(Photo photo, PixelEllipse outer, PixelEllipse inner, bool topsOutward)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return Run(photo.Gray, outer, inner, topsOutward);
    }

    /// <summary>Unrolls the face of a ring.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="ring">The face.</param>
    /// <param name="cut">Where to cut it open; null to start anywhere and go on past a full turn, so that it can be found out.</param>
    public Strip Run(Photo photo, RingFace ring, RingCut? cut)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(ring);
        return Run(photo.Gray, ring.Plane, cut ?? new RingCut(_options.Start, TopsOutward: true, _options.Overlap));
    }

    /// <summary>Unrolls a ring of a grey picture.</summary>
    /// <inheritdoc cref="Run(Photo, PixelEllipse, PixelEllipse, bool)"/>
    public Strip Run(GrayImage source, PixelEllipse outer, PixelEllipse inner, bool topsOutward) =>
        Run(source, new RingPlane(outer, inner), new RingCut(_options.Start, topsOutward, _options.Overlap));

    private Strip Run(GrayImage source, RingPlane plane, RingCut cut)
    {
        var turns = 1 + (cut.Overlap.Radians / (2 * Math.PI));
        var pixelsPerRadius = plane.Outer.SemiMajor.Pixels;
        var map = new RingStripMap(plane, cut.TopsOutward, pixelsPerRadius, cut.Start);
        if (map.ColumnsPerTurn * turns > _options.MaximumWidth)
        {
            pixelsPerRadius *= _options.MaximumWidth / (map.ColumnsPerTurn * turns);
            map = new RingStripMap(plane, cut.TopsOutward, pixelsPerRadius, cut.Start);
        }

        var width = Math.Max(1, (int)(map.ColumnsPerTurn * turns));
        var height = Math.Max(1, 1 + (int)((1 - plane.InnerRadius) * pixelsPerRadius));
        return new Strip(PhotoSampler.Sample(source, map, width, height), map, 2 * pixelsPerRadius, Unrolled: true);
    }
}
