using System;
using System.Collections.Generic;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Strips;

/// <summary>The axial positions that a set of photos shows.</summary>
internal static class AxialRange
{
    /// <summary>Step in pixels along the frame's edge.</summary>
    private const int FrameStep = 4;

    /// <summary>Gives the range from the first to the last axial position that any photo shows, each photo counted from its own zero.</summary>
    /// <exception cref="InscriptionLabException">A tube does not lie in its photo.</exception>
    internal static (double From, double To) Of(IReadOnlyList<Photo> photos, IReadOnlyList<Tube> tubes, double halfArc)
    {
        var from = double.PositiveInfinity;
        var to = double.NegativeInfinity;
        for (var i = 0; i < photos.Count; i++)
        {
            var (first, last) = InFrame(photos[i], tubes[i], halfArc);
            from = Math.Min(from, first);
            to = Math.Max(to, last);
        }

        return (from, to);
    }

    /// <summary>Gives the axial positions over which some generatrix of an arc lies in the frame and the tube was seen.</summary>
    /// <exception cref="InscriptionLabException">The tube does not lie in the photo.</exception>
    internal static (double From, double To) InFrame(Photo photo, Tube tube, double halfArc)
    {
        var (projection, axis) = (new CylinderProjection(tube.Pose), tube.Axis);
        var (width, height) = (photo.Gray.Width, photo.Gray.Height);
        var from = double.PositiveInfinity;
        var to = double.NegativeInfinity;
        void Look(double x, double y)
        {
            if (projection.ToSurface(new PixelPoint(x, y)) is { } surface && Math.Abs(surface.Around.Radians) <= halfArc)
            {
                from = Math.Min(from, surface.Axial);
                to = Math.Max(to, surface.Axial);
            }
        }

        for (var x = 0; x < width + FrameStep; x += FrameStep)
        {
            Look(Math.Min(x, width - 1), 0);
            Look(Math.Min(x, width - 1), height - 1);
        }

        for (var y = 0; y < height + FrameStep; y += FrameStep)
        {
            Look(0, Math.Min(y, height - 1));
            Look(width - 1, Math.Min(y, height - 1));
        }

        var start = projection.AxialOf(axis.Start);
        var end = projection.AxialOf(axis.End);
        if (start is { } one && end is { } other)
        {
            from = double.IsFinite(from) ? Math.Max(from, Math.Min(one, other)) : Math.Min(one, other);
            to = double.IsFinite(to) ? Math.Min(to, Math.Max(one, other)) : Math.Max(one, other);
        }

        return from < to ? (from, to) : throw new InscriptionLabException($"{photo.File}: the tube does not lie in the photo; mark its two long sides in it by hand (--edges).");
    }
}
