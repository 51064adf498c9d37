using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds a checkerboard of any number of squares: saddle points of the light, grown into a lattice, then the sides of its squares measured.</summary>
internal sealed class CheckerboardReference : IScaleReference
{
    /// <summary>Longest side of the picture in which the lattice is looked for; corners are refined in the whole picture.</summary>
    private const int SearchSide = 1600;

    /// <summary>Half the refinement window, as a share of the distance of neighbouring corners: the window must not reach the next corner.</summary>
    private const double WindowShare = 0.35;
    private const int SmallestWindow = 3;
    private const int LargestWindow = 16;
    private const int RefineSteps = 60;
    private const double RefineStop = 1e-4;

    /// <summary>Corners farther than this many times the median distance from the fitted lattice are no corners of it.</summary>
    private const double OutlierFactor = 5;

    /// <summary>Squares beyond the outermost inner corners that belong to the board: its own last square and a margin.</summary>
    private const double OutlineSquares = 2;

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Checkerboard;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        using var native = NativeImage.View(image);
        var shrink = Math.Min(1.0, SearchSide / (double)Math.Max(image.Width, image.Height));
        ImmutableArray<LatticeCorner> lattice;
        if (shrink < 1)
        {
            using var small = native.Apply((from, to) => Cv2.Resize(from, to, default, shrink, shrink, InterpolationFlags.Area));
            lattice = CheckerLattice.Find(small.ToGray(), cancel);
        }
        else
        {
            lattice = CheckerLattice.Find(image, cancel);
        }

        if (lattice.IsEmpty)
        {
            return null;
        }

        var refined = Refine(native, [.. lattice.Select(c => c with { At = new PixelPoint(((c.At.X + 0.5) / shrink) - 0.5, ((c.At.Y + 0.5) / shrink) - 0.5) })]);
        return Sighting(LightPicture.From(image), refined, size);
    }

    private static ImmutableArray<LatticeCorner> Refine(NativeImage native, ImmutableArray<LatticeCorner> corners)
    {
        var window = Math.Clamp((int)(WindowShare * CheckerLattice.Spacing(corners)), SmallestWindow, LargestWindow);
        var points = Cv2.CornerSubPix(
            native.Mat,
            corners.Select(c => new Point2f((float)c.At.X, (float)c.At.Y)),
            new Size(window, window),
            new Size(-1, -1),
            new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, RefineSteps, RefineStop));
        return [.. corners.Select((c, i) => c with { At = new PixelPoint(points[i].X, points[i].Y) })];
    }

    private static ScaleSighting? Sighting(LightPicture picture, ImmutableArray<LatticeCorner> corners, Length? size)
    {
        var turned = RightHanded(corners);
        var plane = turned.Select(c => new PixelPoint(c.I, c.J)).ToArray();
        var seen = turned.Select(c => c.At).ToArray();
        var homography = PlaneHomography.Fit(plane, seen);
        if (homography is null)
        {
            return null;
        }

        var distances = turned.Select(c => homography.ToPicture(c.I, c.J).DistanceTo(c.At).Pixels).ToArray();
        var limit = OutlierFactor * Math.Max(Median.Of(distances), 0.02);
        var pitch = size?.Millimetres ?? 1;
        var kept = turned.Where((_, i) => distances[i] <= limit).ToArray();
        var (left, right) = (turned.Min(c => c.I) - OutlineSquares, turned.Max(c => c.I) + OutlineSquares);
        var (top, bottom) = (turned.Min(c => c.J) - OutlineSquares, turned.Max(c => c.J) + OutlineSquares);
        return new ScaleSighting(
            ScaleKind.Checkerboard,
            Length.FromMillimetres(pitch),
            size is null,
            [.. kept.Select(c => new CornerObservation(0, c.I * pitch, c.J * pitch, c.At))],
            [.. CheckerEdges.Read(picture, kept, homography, pitch)],
            [],
            [homography.ToPicture(left, top), homography.ToPicture(right, top), homography.ToPicture(right, bottom), homography.ToPicture(left, bottom)]);
    }

    /// <summary>Mirrors the lattice where its second axis does not turn from the first as the picture's Y from its X.</summary>
    private static LatticeCorner[] RightHanded(ImmutableArray<LatticeCorner> corners)
    {
        var (sumI, sumJ, sumX, sumY) = (corners.Average(c => c.I), corners.Average(c => c.J), corners.Average(c => c.At.X), corners.Average(c => c.At.Y));
        var ix = corners.Sum(c => (c.I - sumI) * (c.At.X - sumX));
        var iy = corners.Sum(c => (c.I - sumI) * (c.At.Y - sumY));
        var jx = corners.Sum(c => (c.J - sumJ) * (c.At.X - sumX));
        var jy = corners.Sum(c => (c.J - sumJ) * (c.At.Y - sumY));
        return (ix * jy) - (iy * jx) >= 0 ? [.. corners] : [.. corners.Select(c => c with { J = -c.J })];
    }
}
