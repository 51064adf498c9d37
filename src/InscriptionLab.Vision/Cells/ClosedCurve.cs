using System;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Points all round an ellipse of the picture or a circle of the world.</summary>
internal static class ClosedCurve
{
    /// <summary>Points traced round a circle for each pixel of its radius, within bounds: neighbours about four pixels apart, since each averages over three.</summary>
    private const double PointsPerRadiusPixel = 1.6;
    private const int FewestPoints = 90;
    private const int MostPoints = 400;

    /// <summary>Gives how many points a circle of a radius in pixels is traced at.</summary>
    internal static int PointsFor(double radiusPixels) => (int)Math.Clamp(PointsPerRadiusPixel * radiusPixels, FewestPoints, MostPoints);

    /// <summary>Gives points round an ellipse.</summary>
    internal static CurvePoint[] Of(FittedEllipse ellipse, int count)
    {
        var (sin, cos) = Math.SinCos(ellipse.Rotation);
        var points = new CurvePoint[count];
        for (var i = 0; i < count; i++)
        {
            var (s, c) = Math.SinCos(i * Math.Tau / count);
            var (u, v) = (ellipse.SemiMajor * c, ellipse.SemiMinor * s);
            var (nu, nv) = (c / ellipse.SemiMajor, s / ellipse.SemiMinor);
            var norm = Math.Sqrt((nu * nu) + (nv * nv));
            points[i] = new CurvePoint(
                new PixelPoint(ellipse.CentreX + (u * cos) - (v * sin), ellipse.CentreY + (u * sin) + (v * cos)),
                ((nu * cos) - (nv * sin)) / norm,
                ((nu * sin) + (nv * cos)) / norm);
        }

        return points;
    }

    /// <summary>Gives points round the picture of a circle parallel to the scale's plane.</summary>
    internal static CurvePoint[] Of(PlaneCamera camera, Vector3D centre, double radius, int count)
    {
        var points = new CurvePoint[count];
        for (var i = 0; i < count; i++)
        {
            const double Turn = 1e-4;
            PixelPoint Picture(double angle) =>
                camera.Project(new Vector3D(centre.X + (radius * Math.Cos(angle)), centre.Y + (radius * Math.Sin(angle)), centre.Z));
            var angle = i * Math.Tau / count;
            var (before, at, after) = (Picture(angle - Turn), Picture(angle), Picture(angle + Turn));
            var (tx, ty) = (after.X - before.X, after.Y - before.Y);
            var length = Math.Sqrt((tx * tx) + (ty * ty));
            points[i] = new CurvePoint(at, ty / length, -tx / length);
        }

        return points;
    }
}
