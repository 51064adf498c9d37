using System;
using InscriptionLab.Measures;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>A projective map from a plane (millimetres or lattice steps) to the picture.</summary>
public sealed class PlaneHomography
{
    private const int FewestPoints = 4;
    private readonly Matrix<double> _matrix;

    private PlaneHomography(Matrix<double> matrix) => _matrix = matrix;

    /// <summary>Fits the map by the normalised direct linear transform: a start, not a measurement.</summary>
    /// <remarks>R. Hartley, A. Zisserman, Multiple View Geometry, 2nd ed. (2004), algorithm 4.2.</remarks>
    /// <param name="plane">Points of the plane, as (X, Y).</param>
    /// <param name="picture">Their pictures.</param>
    /// <returns>The map, or null where the points do not determine one.</returns>
    /// <exception cref="ArgumentException">There are fewer than four points, or the lists differ in length.</exception>
    public static PlaneHomography? Fit(ReadOnlySpan<PixelPoint> plane, ReadOnlySpan<PixelPoint> picture)
    {
        if (plane.Length < FewestPoints || plane.Length != picture.Length)
        {
            throw new ArgumentException("A homography needs four points or more in both lists.", nameof(plane));
        }

        var from = Normaliser(plane);
        var to = Normaliser(picture);
        var system = Matrix<double>.Build.Dense(2 * plane.Length, 9);
        for (var i = 0; i < plane.Length; i++)
        {
            var (x, y) = (from.Scale * (plane[i].X - from.X), from.Scale * (plane[i].Y - from.Y));
            var (u, v) = (to.Scale * (picture[i].X - to.X), to.Scale * (picture[i].Y - to.Y));
            system.SetRow(2 * i, [x, y, 1, 0, 0, 0, -u * x, -u * y, -u]);
            system.SetRow((2 * i) + 1, [0, 0, 0, x, y, 1, -v * x, -v * y, -v]);
        }

        var normal = system.TransposeThisAndMultiply(system);
        if (!double.IsFinite(normal.FrobeniusNorm()))
        {
            return null;
        }

        var smallest = normal.Evd(Symmetricity.Symmetric).EigenVectors.Column(0);
        var h = Matrix<double>.Build.Dense(3, 3, (r, c) => smallest[(3 * r) + c]);
        var fromMatrix = Matrix<double>.Build.DenseOfRowMajor(3, 3, [from.Scale, 0, -from.Scale * from.X, 0, from.Scale, -from.Scale * from.Y, 0, 0, 1]);
        var toInverse = Matrix<double>.Build.DenseOfRowMajor(3, 3, [1 / to.Scale, 0, to.X, 0, 1 / to.Scale, to.Y, 0, 0, 1]);
        var matrix = toInverse * h * fromMatrix;
        return Math.Abs(matrix[2, 2]) < 1e-12 * matrix.FrobeniusNorm() ? null : new PlaneHomography(matrix / matrix[2, 2]);
    }

    /// <summary>Gives the picture of a point of the plane.</summary>
    public PixelPoint ToPicture(double x, double y)
    {
        var w = (_matrix[2, 0] * x) + (_matrix[2, 1] * y) + _matrix[2, 2];
        return new PixelPoint(
            ((_matrix[0, 0] * x) + (_matrix[0, 1] * y) + _matrix[0, 2]) / w,
            ((_matrix[1, 0] * x) + (_matrix[1, 1] * y) + _matrix[1, 2]) / w);
    }

    /// <summary>Gives the camera with a given focal length that sees the plane so, as nearly as a rotation can.</summary>
    /// <remarks>Z. Zhang, IEEE PAMI 22(11) (2000) 1330-1334, section 3.1.</remarks>
    public PlaneCamera ToCamera(double focal, PixelPoint principalPoint)
    {
        Vector3D Column(int c) => new(
            (_matrix[0, c] - (principalPoint.X * _matrix[2, c])) / focal,
            (_matrix[1, c] - (principalPoint.Y * _matrix[2, c])) / focal,
            _matrix[2, c]);
        var (a, b, t) = (Column(0), Column(1), Column(2));
        var scale = (t.Z < 0 ? -1 : 1) * 2 / (a.Norm + b.Norm);
        var x = (a * scale).Normalised();
        var z = x.Cross(b * scale).Normalised();
        var y = z.Cross(x);
        return new PlaneCamera(
            focal,
            principalPoint,
            new Vector3D(x.X, y.X, z.X),
            new Vector3D(x.Y, y.Y, z.Y),
            new Vector3D(x.Z, y.Z, z.Z),
            t * scale);
    }

    private static (double X, double Y, double Scale) Normaliser(ReadOnlySpan<PixelPoint> points)
    {
        var (x, y, spread) = (0.0, 0.0, 0.0);
        foreach (var p in points)
        {
            x += p.X / points.Length;
            y += p.Y / points.Length;
        }

        foreach (var p in points)
        {
            spread += Math.Sqrt(((p.X - x) * (p.X - x)) + ((p.Y - y) * (p.Y - y))) / points.Length;
        }

        return (x, y, Math.Sqrt(2) / Math.Max(spread, 1e-12));
    }
}
