using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds square coded markers of any common dictionary and measures every edge of their pattern.</summary>
internal sealed class ArucoReference : IScaleReference
{
    /// <summary>Fewest edge points of a marker that is measured by: twice the unknowns of a plane's picture.</summary>
    private const int FewestPoints = 16;

    /// <summary>Margin round the markers that belongs to the card, as a share of a marker's side.</summary>
    private const double OutlineShare = 0.6;

    /// <summary>Markers of one dictionary after which no other is tried: two false ones of one dictionary are not to be expected.</summary>
    private const int EnoughMarkers = 2;

    /// <summary>Dictionaries tried, in this order; the one with most markers wins.</summary>
    private static readonly PredefinedDictionaryType[] Dictionaries =
    [
        PredefinedDictionaryType.Dict4X4_50,
        PredefinedDictionaryType.Dict4X4_1000,
        PredefinedDictionaryType.Dict5X5_1000,
        PredefinedDictionaryType.Dict6X6_1000,
        PredefinedDictionaryType.Dict7X7_1000,
        PredefinedDictionaryType.DictArucoOriginal,
        PredefinedDictionaryType.DictAprilTag_36h11,
    ];

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Aruco;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        var (squares, cells) = Detect(image, cancel);
        if (squares.Count == 0)
        {
            return null;
        }

        var picture = LightPicture.From(image);
        var side = size?.Millimetres ?? 1;
        var corners = ImmutableArray.CreateBuilder<CornerObservation>();
        var edges = ImmutableArray.CreateBuilder<EdgeObservation>();
        var board = 0;
        foreach (var square in squares)
        {
            var read = MarkerEdges.Read(picture, square, cells, board, side);
            if (read.Count < FewestPoints)
            {
                continue;
            }

            edges.AddRange(read);
            corners.Add(new CornerObservation(board, 0, 0, square[0]));
            corners.Add(new CornerObservation(board, side, 0, square[1]));
            corners.Add(new CornerObservation(board, side, side, square[2]));
            corners.Add(new CornerObservation(board, 0, side, square[3]));
            board++;
        }

        return board == 0
            ? null
            : new ScaleSighting(ScaleKind.Aruco, Length.FromMillimetres(side), size is null, corners.ToImmutable(), edges.ToImmutable(), [], Outline(squares));
    }

    private static (List<PixelPoint[]> Squares, int Cells) Detect(GrayImage image, CancellationToken cancel)
    {
        using var native = NativeImage.From(image);
        List<PixelPoint[]> best = [];
        var cells = 0;
        foreach (var type in Dictionaries)
        {
            cancel.ThrowIfCancellationRequested();
            using var dictionary = CvAruco.GetPredefinedDictionary(type);
            using var detector = new ArucoDetector(dictionary);
            detector.DetectMarkers(native.Mat, out var corners, out _, out _);
            if (corners.Length > best.Count)
            {
                best = [.. corners.Select(c => c.Select(p => new PixelPoint(p.X, p.Y)).ToArray())];

                // The pattern and its black border, one cell wide on each side.
                cells = dictionary.MarkerSize + 2;
            }

            if (best.Count >= EnoughMarkers)
            {
                break;
            }
        }

        return (best, cells);
    }

    private static ImmutableArray<PixelPoint> Outline(List<PixelPoint[]> squares)
    {
        var side = squares.Average(s => s[0].DistanceTo(s[1]).Pixels);
        var hull = Cv2.ConvexHull(squares.SelectMany(s => s).Select(p => new Point2f((float)p.X, (float)p.Y)));
        var (x, y) = (hull.Average(p => p.X), hull.Average(p => p.Y));
        return [.. hull.Select(p =>
        {
            var distance = Math.Max(1e-9, Math.Sqrt(((p.X - x) * (p.X - x)) + ((p.Y - y) * (p.Y - y))));
            var grow = 1 + (OutlineShare * side * Math.Sqrt(2) / distance);
            return new PixelPoint(x + ((p.X - x) * grow), y + ((p.Y - y) * grow));
        })];
    }
}
