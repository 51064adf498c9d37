using System;
using InscriptionLab.Measures;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Fits an ellipse to points, in double precision throughout.</summary>
public static class EllipseFit
{
    /// <summary>Fewest points of an ellipse.</summary>
    private const int FewestPoints = 5;
    private const int MaximumIterations = 400;
    private const double DifferenceStep = 1e-6;

    /// <summary>Direct algebraic fit under 4ac - b² = 1: always an ellipse, but biased toward smaller ones, so a start only.</summary>
    /// <remarks>A. Fitzgibbon, M. Pilu, R. Fisher, IEEE PAMI 21(5) (1999) 476-480, in the stable form of R. Halíř, J. Flusser, WSCG 1998.</remarks>
    /// <returns>The ellipse, or null where the points have none.</returns>
    /// <exception cref="ArgumentException">There are fewer than five points.</exception>
    public static FittedEllipse? Direct(ReadOnlySpan<PixelPoint> points)
    {
        if (points.Length < FewestPoints)
        {
            throw new ArgumentException("An ellipse needs five points or more.", nameof(points));
        }

        var (meanX, meanY, scale) = Frame(points);
        var quadratic = Matrix<double>.Build.Dense(points.Length, 3);
        var linear = Matrix<double>.Build.Dense(points.Length, 3);
        for (var i = 0; i < points.Length; i++)
        {
            var x = (points[i].X - meanX) / scale;
            var y = (points[i].Y - meanY) / scale;
            quadratic.SetRow(i, [x * x, x * y, y * y]);
            linear.SetRow(i, [x, y, 1]);
        }

        var s1 = quadratic.TransposeThisAndMultiply(quadratic);
        var s2 = quadratic.TransposeThisAndMultiply(linear);
        var s3 = linear.TransposeThisAndMultiply(linear);
        if (Math.Abs(s3.Determinant()) < double.Epsilon)
        {
            return null;
        }

        var t = -s3.Inverse() * s2.Transpose();
        var reduced = s1 + (s2 * t);
        var m = Matrix<double>.Build.Dense(3, 3);
        m.SetRow(0, reduced.Row(2) / 2);
        m.SetRow(1, -reduced.Row(1));
        m.SetRow(2, reduced.Row(0) / 2);
        if (!double.IsFinite(m.FrobeniusNorm()))
        {
            return null;
        }

        var vectors = m.Evd().EigenVectors;
        for (var i = 0; i < 3; i++)
        {
            var v = vectors.Column(i);
            if ((4 * v[0] * v[2]) - (v[1] * v[1]) > 0)
            {
                var w = t * v;
                return FromConic(v[0], v[1], v[2], w[0], w[1], w[2], meanX, meanY, scale);
            }
        }

        return null;
    }

    /// <summary>Fit by least orthogonal distances.</summary>
    /// <param name="points">Five points or more.</param>
    /// <param name="start">Where to start; null to start from a circle, which always lies in the ellipse's basin for points all round.</param>
    /// <remarks>W. Gander, G. H. Golub, R. Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994) 558-578.</remarks>
    /// <exception cref="ArgumentException">There are fewer than five points, or all lie on one line.</exception>
    public static FittedEllipse Geometric(ReadOnlySpan<PixelPoint> points, FittedEllipse? start = null)
    {
        if (points.Length < FewestPoints)
        {
            throw new ArgumentException("An ellipse needs five points or more.", nameof(points));
        }

        var circle = start is null ? CircleFit.Geometric(points) : null;
        var first = start ?? new FittedEllipse(circle!.CentreX, circle.CentreY, circle.Radius * 1.01, circle.Radius * 0.99, 0, 0);
        var own = points.ToArray();
        void Residuals(double[] p, double[] r)
        {
            for (var i = 0; i < own.Length; i++)
            {
                r[i] = SignedDistance(own[i], p[0], p[1], Math.Abs(p[2]), Math.Abs(p[3]), p[4]);
            }
        }

        var step = DifferenceStep * first.SemiMajor;
        var result = LeastSquares.Solve(
            Residuals,
            own.Length,
            [first.CentreX, first.CentreY, first.SemiMajor, first.SemiMinor, first.Rotation],
            [step, step, step, step, DifferenceStep],
            MaximumIterations,
            LeastSquares.FinestGain);
        var q = result.Parameters;
        return Ordered(q[0], q[1], Math.Abs(q[2]), Math.Abs(q[3]), q[4], result.ResidualNorm);
    }

    /// <summary>Gives the orthogonal distance of a point from an ellipse, negative inside.</summary>
    public static double SignedDistance(PixelPoint point, double centreX, double centreY, double semiAxis, double otherSemiAxis, double rotation)
    {
        var (sin, cos) = Math.SinCos(rotation);
        var dx = point.X - centreX;
        var dy = point.Y - centreY;
        var x = Math.Abs((dx * cos) + (dy * sin));
        var y = Math.Abs((dy * cos) - (dx * sin));
        return semiAxis >= otherSemiAxis ? QuadrantDistance(x, y, semiAxis, otherSemiAxis) : QuadrantDistance(y, x, otherSemiAxis, semiAxis);
    }

    /// <summary>Distance in the first quadrant, a ≥ b: Newton's method on the foot point's Lagrange multiplier, kept inside its bracket.</summary>
    private static double QuadrantDistance(double x, double y, double a, double b)
    {
        const int Most = 60;
        if (!(b > 0))
        {
            return Math.Sqrt((x * x) + (y * y));
        }

        var inside = ((x / a) * (x / a)) + ((y / b) * (y / b)) < 1;
        if (y <= a * 1e-14)
        {
            var focal = ((a * a) - (b * b)) / a;
            if (x < focal)
            {
                var footX = a * (a * x / ((a * a) - (b * b)));
                var ratio = footX / a;
                var footY = b * Math.Sqrt(Math.Max(0, 1 - (ratio * ratio)));
                return -Math.Sqrt(((x - footX) * (x - footX)) + (footY * footY));
            }

            return x - a;
        }

        var low = -(b * b) + (b * y);
        var high = -(b * b) + Math.Sqrt((a * a * x * x) + (b * b * y * y));
        var t = inside ? low : Math.Max(low, Math.Min(0, high));
        for (var i = 0; i < Most; i++)
        {
            var p = a * x / (t + (a * a));
            var q = b * y / (t + (b * b));
            var value = (p * p) + (q * q) - 1;
            var slope = -2 * ((p * p / (t + (a * a))) + (q * q / (t + (b * b))));
            if (value > 0)
            {
                low = t;
            }
            else
            {
                high = t;
            }

            var next = t - (value / slope);
            if (!(next > low && next < high))
            {
                next = (low + high) / 2;
            }

            if (Math.Abs(next - t) <= 1e-15 * a * a)
            {
                t = next;
                break;
            }

            t = next;
        }

        var fx = a * a * x / (t + (a * a));
        var fy = b * b * y / (t + (b * b));
        var distance = Math.Sqrt(((x - fx) * (x - fx)) + ((y - fy) * (y - fy)));
        return inside ? -distance : distance;
    }

    private static (double X, double Y, double Scale) Frame(ReadOnlySpan<PixelPoint> points)
    {
        var (x, y, spread) = (0.0, 0.0, 0.0);
        foreach (var point in points)
        {
            x += point.X / points.Length;
            y += point.Y / points.Length;
        }

        foreach (var point in points)
        {
            spread += (((point.X - x) * (point.X - x)) + ((point.Y - y) * (point.Y - y))) / points.Length;
        }

        return (x, y, Math.Max(Math.Sqrt(spread), double.Epsilon));
    }

    private static FittedEllipse? FromConic(double a, double b, double c, double d, double e, double f, double meanX, double meanY, double scale)
    {
        var determinant = (4 * a * c) - (b * b);
        var cx = ((b * e) - (2 * c * d)) / determinant;
        var cy = ((b * d) - (2 * a * e)) / determinant;
        var value = (a * cx * cx) + (b * cx * cy) + (c * cy * cy) + (d * cx) + (e * cy) + f;
        var root = Math.Sqrt(((a - c) * (a - c)) + (b * b));
        var lambdaSmall = (a + c - root) / 2;
        var lambdaLarge = (a + c + root) / 2;
        var first = -value / lambdaSmall;
        var second = -value / lambdaLarge;
        if (!(first > 0 && second > 0) || !double.IsFinite(first + second))
        {
            return null;
        }

        // Eigenvector of the smaller (in size) eigenvalue is the longer axis.
        var longer = Math.Max(first, second);
        var shorter = Math.Min(first, second);
        var lambda = Math.Abs(lambdaSmall) < Math.Abs(lambdaLarge) ? lambdaSmall : lambdaLarge;
        var rotation = Math.Abs(b) < 1e-300 && Math.Abs(a - lambda) < Math.Abs(c - lambda) ? 0 : Math.Atan2(lambda - a, b / 2);
        return Ordered((cx * scale) + meanX, (cy * scale) + meanY, Math.Sqrt(longer) * scale, Math.Sqrt(shorter) * scale, rotation, double.NaN);
    }

    private static FittedEllipse Ordered(double x, double y, double first, double second, double rotation, double norm)
    {
        if (second > first)
        {
            (first, second) = (second, first);
            rotation += Math.PI / 2;
        }

        rotation -= Math.PI * Math.Round(rotation / Math.PI);
        if (rotation <= -Math.PI / 2)
        {
            rotation += Math.PI;
        }

        return new FittedEllipse(x, y, first, second, rotation, norm);
    }
}
