using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>A flat ring of outer radius 1 in front of a pinhole camera; its circles' exact images follow from the transformed conic.</summary>
internal sealed record RingScene
{
    public double Tilt { get; init; }

    public double Turn { get; init; }

    public double OffX { get; init; }

    public double OffY { get; init; }

    public double Inner { get; init; } = 0.6;

    public double Focal { get; init; } = 1500;

    public double Distance { get; init; } = 8;

    public double CentreX { get; init; } = 400;

    public double CentreY { get; init; } = 300;

    public static GrayImage Grey(int width, int height) => new(width, height, new byte[width * height]);

    public PixelPoint Project(double radius, double around)
    {
        var h = Homography();
        var (x, y) = (radius * Math.Cos(around), radius * Math.Sin(around));
        var z = (h[6] * x) + (h[7] * y) + h[8];
        return new PixelPoint(((h[0] * x) + (h[1] * y) + h[2]) / z, ((h[3] * x) + (h[4] * y) + h[5]) / z);
    }

    /// <summary>The image of a circle about the centre: the conic H^-T diag(1, 1, -r2) H^-1 in normal form.</summary>
    public PixelEllipse EllipseOf(double radius)
    {
        var i = Inverse(Homography());
        var weights = new[] { 1, 1, -radius * radius };
        double Entry(int a, int b)
        {
            double sum = 0;
            for (var k = 0; k < 3; k++)
            {
                sum += i[(3 * k) + a] * weights[k] * i[(3 * k) + b];
            }

            return sum;
        }

        var (a, b, c, d, e, f) = (Entry(0, 0), Entry(0, 1), Entry(1, 1), Entry(0, 2), Entry(1, 2), Entry(2, 2));
        var determinant = (a * c) - (b * b);
        var x = ((b * e) - (c * d)) / determinant;
        var y = ((b * d) - (a * e)) / determinant;
        var level = -((d * x) + (e * y) + f);
        var mean = (a + c) / 2;
        var half = Math.Sqrt(((a - c) * (a - c) / 4) + (b * b)) * Math.Sign(mean);
        var angle = (Math.Atan2(2 * b, a - c) / 2) + (mean > 0 ? Math.PI / 2 : 0);
        return new PixelEllipse(
            new PixelPoint(x, y),
            PixelLength.FromPixels(Math.Sqrt(level / (mean - half))),
            PixelLength.FromPixels(Math.Sqrt(level / (mean + half))),
            Angle.FromRadians(angle));
    }

    /// <summary>The plane point, in outer radii from the centre, that a photo point shows.</summary>
    public static (double X, double Y) ToPlane(double x, double y, double[] inverse)
    {
        var z = (inverse[6] * x) + (inverse[7] * y) + inverse[8];
        return (((inverse[0] * x) + (inverse[1] * y) + inverse[2]) / z, ((inverse[3] * x) + (inverse[4] * y) + inverse[5]) / z);
    }

    /// <summary>The way from photo points to the plane that lies so far below the ring's, in outer radii.</summary>
    public double[] InverseOf(double depth) => Inverse(Homography(depth));

    private double[] Homography(double depth = 0)
    {
        // Plane point (x, y) -> camera: turned about the view axis, tilted about the camera's X axis, pushed away.
        var (sinTurn, cosTurn) = Math.SinCos(Turn);
        var (sinTilt, cosTilt) = Math.SinCos(Tilt);
        var (x1, x2) = (cosTurn, -sinTurn);
        var (y1, y2) = (sinTurn * cosTilt, cosTurn * cosTilt);
        var (z1, z2) = (sinTurn * sinTilt, cosTurn * sinTilt);
        var (tx, ty, tz) = (OffX * 2, (OffY * 2) - (depth * sinTilt), Distance + (depth * cosTilt));
        return
        [
            (Focal * x1) + (CentreX * z1), (Focal * x2) + (CentreX * z2), (Focal * tx) + (CentreX * tz),
            (Focal * y1) + (CentreY * z1), (Focal * y2) + (CentreY * z2), (Focal * ty) + (CentreY * tz),
            z1, z2, tz,
        ];
    }

    private static double[] Inverse(double[] m)
    {
        double Minor(int a, int b, int c, int d) => (m[a] * m[d]) - (m[b] * m[c]);
        var determinant = (m[0] * Minor(4, 5, 7, 8)) - (m[1] * Minor(3, 5, 6, 8)) + (m[2] * Minor(3, 4, 6, 7));
        double[] adjugate =
        [
            Minor(4, 5, 7, 8), -Minor(1, 2, 7, 8), Minor(1, 2, 4, 5),
            -Minor(3, 5, 6, 8), Minor(0, 2, 6, 8), -Minor(0, 2, 3, 5),
            Minor(3, 4, 6, 7), -Minor(0, 1, 6, 7), Minor(0, 1, 3, 4),
        ];
        return Array.ConvertAll(adjugate, value => value / determinant);
    }
}
