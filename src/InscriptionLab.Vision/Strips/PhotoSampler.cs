using System;
using System.Threading.Tasks;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Strips;

/// <summary>
/// Fills a derived picture (a strip, a line crop) straight from a photo, resampled once. Where the derived picture magnifies, the photo is
/// interpolated with an eight-tap Lanczos kernel; where it shrinks, it is sampled as densely as the photo itself (linearly where that is so both ways: the mean
/// over the samples hides the kernel) and averaged down, so that nothing aliases.
/// Points outside the photo show its nearest edge pixel.
/// </summary>
public static class PhotoSampler
{
    /// <summary>Largest number of samples a pixel and direction; beyond it the picture is a thumbnail and some aliasing does not matter.</summary>
    private const int MaximumSamples = 8;

    /// <summary>Shrinking by less than this needs no averaging: the aliased band is above what a phone's lens and JPEG keep.</summary>
    private const double FreeShrink = 1.15;

    /// <summary>Longest row or column of samples that the picture library takes at once.</summary>
    private const int LongestRun = 32766;

    /// <summary>Samples held at once: 2 MB of positions, which stay in a processor's cache.</summary>
    private const int SamplesAtOnce = 1 << 18;

    /// <summary>Places in each direction at which the scale of the map is looked at.</summary>
    private const int Probes = 5;

    /// <summary>Samples the grey levels of a photo.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="map">Leads from the pixels of the result to the photo.</param>
    /// <param name="width">Columns of the result.</param>
    /// <param name="height">Rows of the result.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above zero, or more columns are asked for than the picture library makes.</exception>
    public static GrayImage Sample(Photo photo, IPixelMap map, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return Sample(photo.Gray, map, width, height);
    }

    /// <summary>Samples a grey picture.</summary>
    /// <inheritdoc cref="Sample(Photo, IPixelMap, int, int)"/>
    public static GrayImage Sample(GrayImage source, IPixelMap map, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(source);
        using var native = NativeImage.View(source);
        using var sampled = Sample(native, map, width, height);
        return sampled.ToGray();
    }

    /// <summary>Samples a colour picture.</summary>
    /// <inheritdoc cref="Sample(Photo, IPixelMap, int, int)"/>
    public static ColourImage Sample(ColourImage source, IPixelMap map, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(source);
        using var native = NativeImage.View(source);
        using var sampled = Sample(native, map, width, height);
        return sampled.ToColour();
    }

    internal static NativeImage Sample(NativeImage source, IPixelMap map, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, LongestRun);
        var grid = new SampleGrid(map, width, SamplesPerPixel(map, width, height));
        var result = NativeImage.Empty(height, width, source.Mat.Type());
        try
        {
            var rows = Math.Max(1, SamplesAtOnce / grid.SamplesPerRow);
            Parallel.For(0, (height + rows - 1) / rows, band => Fill(result.Mat, source.Mat, grid, band * rows, Math.Min(height, (band + 1) * rows)));
            return result;
        }
        catch
        {
            result.Dispose();
            throw;
        }
    }

    /// <summary>Fills some rows of the result. Bands keep memory flat however densely a large photo is sampled.</summary>
    private static void Fill(Mat result, Mat source, SampleGrid grid, int from, int to)
    {
        using var rows = NativeImage.Own(result.RowRange(from, to));
        using var positions = grid.Positions(from, to);
        using var none = NativeImage.Own(new Mat());
        if (!grid.IsDense)
        {
            Cv2.Remap(source, rows.Mat, positions.Mat, none.Mat, InterpolationFlags.Lanczos4, BorderTypes.Replicate);
            return;
        }

        using var dense = NativeImage.Own(new Mat());
        Cv2.Remap(source, dense.Mat, positions.Mat, none.Mat, grid.IsDenseBothWays ? InterpolationFlags.Linear : InterpolationFlags.Lanczos4, BorderTypes.Replicate);
        Cv2.Resize(dense.Mat, rows.Mat, rows.Mat.Size(), 0, 0, InterpolationFlags.Area);
    }

    /// <summary>Photo pixels that one pixel of the result covers, at its largest, in each direction.</summary>
    private static (int X, int Y) SamplesPerPixel(IPixelMap map, int width, int height)
    {
        double largestX = 0;
        double largestY = 0;
        for (var i = 0; i < Probes * Probes; i++)
        {
            var at = new PixelPoint((width - 1) * (i % Probes) / (Probes - 1.0), (height - 1) * (i / Probes) / (Probes - 1.0));
            var here = map.ToPhoto(at);
            largestX = Math.Max(largestX, here.DistanceTo(map.ToPhoto(at with { X = at.X + 1 })).Pixels);
            largestY = Math.Max(largestY, here.DistanceTo(map.ToPhoto(at with { Y = at.Y + 1 })).Pixels);
        }

        return (Samples(largestX, width), Samples(largestY, 1));
    }

    /// <summary>Samples a pixel in one direction: fewer where so many side by side would be more than a run takes.</summary>
    private static int Samples(double shrink, int sideBySide) => shrink <= FreeShrink ? 1 : Math.Clamp(LongestRun / sideBySide, 1, Math.Min(MaximumSamples, (int)Math.Ceiling(shrink)));
}
