using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using OpenCvSharp;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds square coded markers of any common dictionary and measures every edge of their pattern.</summary>
internal sealed class ArucoReference : IScaleReference
{
    /// <summary>Fewest edge points of a marker that is measured by: twice the unknowns of a plane's picture.</summary>
    private const int FewestPoints = 16;

    /// <summary>Margin round the markers that belongs to the card, as a share of a marker's side.</summary>
    private const double OutlineShare = 0.6;

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Aruco;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        var seen = MarkerDetection.Of(image, false, cancel);
        var (squares, cells) = (seen.Squares, seen.Cells);
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

    /// <summary>Gives a polygon round squares, with the margin that belongs to their card.</summary>
    internal static ImmutableArray<PixelPoint> Outline(IReadOnlyList<PixelPoint[]> squares)
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
