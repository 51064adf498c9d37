using System;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Strips;

/// <summary>Lays the visible side of a tube flat: X along the axis to the right, Y along the arc downward as the photo shows it, one scale in both.</summary>
public sealed class Unroller
{
    /// <summary>Places along the visible length at which the scale is looked at.</summary>
    private const int ScaleProbes = 65;

    private readonly UnrollerOptions _options;

    /// <summary>Makes an unroller.</summary>
    /// <param name="options">How to unroll; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public Unroller(UnrollerOptions? options = null)
    {
        _options = options ?? new UnrollerOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.HalfArc.Radians, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.MaximumWidth, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.MaximumHeight, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.ShareOfLimb, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(_options.ShareOfLimb, 1, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.SmallestShareOfScale, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(_options.SmallestShareOfScale, 1, nameof(options));
    }

    /// <summary>Unrolls a tube.</summary>
    /// <param name="photo">The photo in which the tube was found.</param>
    /// <param name="tube">The tube.</param>
    /// <returns>The strip, at least as fine as the photo on the generatrix facing the camera unless a largest side cuts it short.</returns>
    /// <exception cref="Outcomes.InscriptionLabException">The tube does not lie in the photo.</exception>
    public Strip Run(Photo photo, Tube tube)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(tube);
        var (map, width, height) = Plan(photo, tube);
        return new Strip(PhotoSampler.Sample(photo, map, width, height), map, 2 * map.PixelsPerRadius, Unrolled: true);
    }

    /// <summary>Gives the photo itself as a strip, shrunk only where it is larger than the largest strip.</summary>
    public Strip Flat(Photo photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        var scale = Math.Min(1, Math.Min((double)_options.MaximumWidth / photo.Gray.Width, (double)_options.MaximumHeight / photo.Gray.Height));
        var map = new FlatStripMap(scale);
        var width = Math.Max(1, (int)(photo.Gray.Width * scale));
        var height = Math.Max(1, (int)(photo.Gray.Height * scale));
        return new Strip(PhotoSampler.Sample(photo, map, width, height), map, 0, Unrolled: false);
    }

    private (CylinderStripMap Map, int Width, int Height) Plan(Photo photo, Tube tube)
    {
        var projection = new CylinderProjection(tube.Pose);
        var halfArc = Math.Min(_options.HalfArc.Radians, projection.Limb.Radians * _options.ShareOfLimb);
        var (from, to) = AxialRange.InFrame(photo, tube, halfArc);
        double finest = 0;
        for (var i = 0; i < ScaleProbes; i++)
        {
            finest = Math.Max(finest, Scale(projection, from + ((to - from) * i / (ScaleProbes - 1))));
        }

        (from, to) = WhereLargeEnough(projection, from, to, finest * _options.SmallestShareOfScale);
        var pixelsPerRadius = Math.Min(finest, Math.Min((_options.MaximumWidth - 1) / (to - from), (_options.MaximumHeight - 1) / (2 * halfArc)));
        var width = 1 + (int)((to - from) * pixelsPerRadius);
        var height = 1 + (int)(2 * halfArc * pixelsPerRadius);
        return (new CylinderStripMap(tube.Pose, pixelsPerRadius, from, Angle.FromRadians(-halfArc)), width, height);
    }

    /// <summary>Cuts off the far end of a tube that runs away from the camera.</summary>
    private static (double From, double To) WhereLargeEnough(CylinderProjection projection, double from, double to, double smallest)
    {
        var first = ScaleProbes;
        var last = -1;
        for (var i = 0; i < ScaleProbes; i++)
        {
            if (Scale(projection, from + ((to - from) * i / (ScaleProbes - 1))) >= smallest)
            {
                first = Math.Min(first, i);
                last = i;
            }
        }

        var step = (to - from) / (ScaleProbes - 1);
        return last > first ? (from + (first * step), from + (last * step)) : (from, to);
    }

    /// <summary>Photo pixels per radius on the generatrix facing the camera, along or across, whichever is finer; zero behind the camera.</summary>
    private static double Scale(CylinderProjection projection, double axial)
    {
        var at = new SurfacePoint(axial, default);
        if (!(projection.ToSpace(at).Z > 0))
        {
            return 0;
        }

        var along = projection.AlongAxis(at);
        var across = projection.AlongArc(at);
        return Math.Sqrt(Math.Max((along.X * along.X) + (along.Y * along.Y), (across.X * across.X) + (across.Y * across.Y)));
    }
}
