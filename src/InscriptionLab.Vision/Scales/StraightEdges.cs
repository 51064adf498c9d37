using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds straight pieces of edge; for finding only, measuring comes after.</summary>
internal static class StraightEdges
{
    /// <summary>Longest side of the pictures in which edges are looked for: grain breaks long edges in the larger, the smaller lacks fine ones.</summary>
    internal const int SearchSide = 1600;
    private const int CoarseSide = 600;

    /// <summary>Finds the pieces, the longest first.</summary>
    /// <param name="image">Grey picture, upright.</param>
    /// <param name="smallestShare">Shortest piece, as a share of the picture's longer side.</param>
    internal static List<PixelSegment> Find(GrayImage image, double smallestShare)
    {
        using var native = NativeImage.View(image);
        return [.. Find(native, SearchSide, smallestShare).Concat(Find(native, CoarseSide, smallestShare)).OrderByDescending(s => s.Length.Pixels)];
    }

    private static List<PixelSegment> Find(NativeImage native, int side, double smallestShare)
    {
        var longer = System.Math.Max(native.Mat.Width, native.Mat.Height);
        var shrink = System.Math.Min(1.0, side / (double)longer);
        using var small = native.Apply((from, to) => Cv2.Resize(from, to, default, shrink, shrink, InterpolationFlags.Area));
        using var detector = LineSegmentDetector.Create(LineSegmentDetectorModes.RefineStd);
        detector.Detect(small.Mat, out var lines, out _, out _, out _);
        PixelPoint Back(float x, float y) => new(((x + 0.5) / shrink) - 0.5, ((y + 0.5) / shrink) - 0.5);
        return
        [
            .. lines.Select(l => new PixelSegment(Back(l.Item0, l.Item1), Back(l.Item2, l.Item3)))
                .Where(s => s.Length.Pixels >= smallestShare * longer),
        ];
    }
}
