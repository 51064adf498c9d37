using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Reports;

/// <summary>How far the edge points of a circle lie from its ellipse.</summary>
internal static class EdgeResiduals
{
    /// <summary>Gives the root mean square of the distances in pixels; null where no points are kept.</summary>
    internal static double? RootMeanSquare(CellCircle circle) => circle.Edge.IsEmpty ? null : Math.Sqrt(circle.Edge.Average(point =>
    {
        var (_, off, _, _) = Of(circle.Ellipse, point);
        return off * off;
    }));

    /// <summary>Gives the edge points with their distance from the ellipse magnified.</summary>
    internal static ImmutableArray<PixelPoint> Magnified(CellCircle circle, double factor) =>
    [
        .. circle.Edge.Select(point =>
        {
            var (on, off, nx, ny) = Of(circle.Ellipse, point);
            return new PixelPoint(on.X + (factor * off * nx), on.Y + (factor * off * ny));
        }),
    ];

    /// <summary>Gives the place on the ellipse beside a point, how far outside it the point lies, and the way outward; true to the first order for points near it.</summary>
    private static (PixelPoint On, double Off, double NormalX, double NormalY) Of(PixelEllipse ellipse, PixelPoint point)
    {
        var (a, b) = (ellipse.SemiMajor.Pixels, ellipse.SemiMinor.Pixels);
        var (sin, cos) = Math.SinCos(ellipse.Rotation.Radians);
        var (dx, dy) = (point.X - ellipse.Centre.X, point.Y - ellipse.Centre.Y);
        var (along, across) = ((dx * cos) + (dy * sin), (dy * cos) - (dx * sin));
        var (s, c) = Math.SinCos(Math.Atan2(across / b, along / a));
        var norm = Math.Sqrt((c * c / (a * a)) + (s * s / (b * b)));
        var (nu, nv) = (c / a / norm, s / b / norm);
        var off = ((along - (a * c)) * nu) + ((across - (b * s)) * nv);
        return (
            new PixelPoint(ellipse.Centre.X + (a * c * cos) - (b * s * sin), ellipse.Centre.Y + (a * c * sin) + (b * s * cos)),
            off,
            (nu * cos) - (nv * sin),
            (nu * sin) + (nv * cos));
    }
}
