using System;
using System.Collections.Generic;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Vision.Cells;

/// <summary>A slow change round a closed curve: a constant and the first two waves, which stand for size, shift and tilt of a circle.</summary>
/// <param name="Mean">Constant.</param>
/// <param name="Cos1">First wave, cosine.</param>
/// <param name="Sin1">First wave, sine.</param>
/// <param name="Cos2">Second wave, cosine.</param>
/// <param name="Sin2">Second wave, sine.</param>
internal readonly record struct Undulation(double Mean, double Cos1, double Sin1, double Cos2, double Sin2)
{
    private const int Terms = 5;
    private const double SmallestDeterminant = 1e-3;

    /// <summary>Gives the value at one of so many evenly spaced places.</summary>
    internal double At(int index, int count)
    {
        var (s, c) = Math.SinCos(index * Math.Tau / count);
        return Mean + (Cos1 * c) + (Sin1 * s) + (Cos2 * ((c * c) - (s * s))) + (Sin2 * 2 * s * c);
    }

    /// <summary>Gives constant and first wave through three places; null where they lie too close together.</summary>
    internal static Undulation? Through((int Index, double Place)[] three, int count)
    {
        var matrix = Matrix<double>.Build.Dense(3, 3);
        var right = Vector<double>.Build.Dense(3);
        for (var i = 0; i < 3; i++)
        {
            var (s, c) = Math.SinCos(three[i].Index * Math.Tau / count);
            matrix.SetRow(i, [1, c, s]);
            right[i] = three[i].Place;
        }

        if (Math.Abs(matrix.Determinant()) < SmallestDeterminant)
        {
            return null;
        }

        var solution = matrix.Solve(right);
        return new Undulation(solution[0], solution[1], solution[2], 0, 0);
    }

    /// <summary>Fits all terms by weighted least squares; null where there are too few points.</summary>
    internal static Undulation? Fit(List<(int Index, double Place, double Weight)> points, int count)
    {
        if (points.Count < 2 * Terms)
        {
            return null;
        }

        var normal = Matrix<double>.Build.Dense(Terms, Terms);
        var right = Vector<double>.Build.Dense(Terms);
        foreach (var (index, place, weight) in points)
        {
            var (s, c) = Math.SinCos(index * Math.Tau / count);
            var row = Vector<double>.Build.Dense([1, c, s, (c * c) - (s * s), 2 * s * c]);
            normal += weight * row.OuterProduct(row);
            right += weight * place * row;
        }

        // Points on a short arc do not fix all waves: a little stiffness keeps the unseen part near the curve.
        const double Stiffness = 1e-3;
        for (var i = 1; i < Terms; i++)
        {
            normal[i, i] += Stiffness * normal[0, 0];
        }

        var solution = normal.Solve(right);
        return new Undulation(solution[0], solution[1], solution[2], solution[3], solution[4]);
    }
}
