using System;
using InscriptionLab.Measures;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Fits a circle to points.</summary>
public static class CircleFit
{
    /// <summary>Fewest points of a circle.</summary>
    private const int FewestPoints = 3;
    private const int MaximumIterations = 200;
    private const double DifferenceStep = 1e-6;

    /// <summary>Linear fit of x² + y² + Dx + Ey + F = 0 (Kåsa's): a start only, since it is biased on short arcs.</summary>
    /// <exception cref="ArgumentException">There are fewer than three points, or all lie on one line.</exception>
    public static FittedCircle Linear(ReadOnlySpan<PixelPoint> points)
    {
        Demand(points);
        var (meanX, meanY) = Means(points);
        var design = Matrix<double>.Build.Dense(points.Length, 3);
        var right = Vector<double>.Build.Dense(points.Length);
        for (var i = 0; i < points.Length; i++)
        {
            var x = points[i].X - meanX;
            var y = points[i].Y - meanY;
            design[i, 0] = x;
            design[i, 1] = y;
            design[i, 2] = 1;
            right[i] = -((x * x) + (y * y));
        }

        var solution = design.QR().Solve(right);
        var (cx, cy) = (-solution[0] / 2, -solution[1] / 2);
        var square = (cx * cx) + (cy * cy) - solution[2];
        if (!(square > 0) || !double.IsFinite(square))
        {
            throw new ArgumentException("Points on one line have no circle.", nameof(points));
        }

        return new FittedCircle(cx + meanX, cy + meanY, Math.Sqrt(square), double.NaN);
    }

    /// <summary>Fit by least orthogonal distances.</summary>
    /// <remarks>W. Gander, G. H. Golub, R. Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994) 558-578.</remarks>
    /// <exception cref="ArgumentException">There are fewer than three points, or all lie on one line.</exception>
    public static FittedCircle Geometric(ReadOnlySpan<PixelPoint> points)
    {
        var start = Linear(points);
        var own = points.ToArray();
        void Residuals(double[] p, double[] r)
        {
            for (var i = 0; i < own.Length; i++)
            {
                r[i] = Math.Sqrt(Square(own[i].X - p[0]) + Square(own[i].Y - p[1])) - p[2];
            }
        }

        var step = DifferenceStep * start.Radius;
        var result = LeastSquares.Solve(Residuals, own.Length, [start.CentreX, start.CentreY, start.Radius], [step, step, step], MaximumIterations, LeastSquares.FinestGain);
        return new FittedCircle(result.Parameters[0], result.Parameters[1], Math.Abs(result.Parameters[2]), result.ResidualNorm);
    }

    private static (double X, double Y) Means(ReadOnlySpan<PixelPoint> points)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var point in points)
        {
            x += point.X;
            y += point.Y;
        }

        return (x / points.Length, y / points.Length);
    }

    private static void Demand(ReadOnlySpan<PixelPoint> points)
    {
        if (points.Length < FewestPoints)
        {
            throw new ArgumentException("A circle needs three points or more.", nameof(points));
        }
    }

    private static double Square(double value) => value * value;
}
