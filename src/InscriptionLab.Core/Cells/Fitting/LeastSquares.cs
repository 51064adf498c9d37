using System;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Nonlinear least squares by Levenberg and Marquardt's damped steps, in double precision, with a Jacobian by central differences.</summary>
public static class LeastSquares
{
    /// <summary>Damping at the start, relative to the diagonal of the normal matrix (common practice).</summary>
    private const double FirstDamping = 1e-3;

    /// <summary>Factor by which damping falls after a good step and rises after a bad one (common practice).</summary>
    private const double DampingFactor = 10;

    /// <summary>Damping at which no better step is looked for.</summary>
    private const double LastDamping = 1e12;

    /// <summary>Relative gain of a step below which a fit to the last digit stands still.</summary>
    internal const double FinestGain = 1e-13;

    /// <summary>Finds the parameters with the smallest sum of squared residuals near a start.</summary>
    /// <param name="residuals">Writes the residuals, each already divided by its standard uncertainty, for given parameters.</param>
    /// <param name="residualCount">How many residuals there are.</param>
    /// <param name="start">Where to start; not changed.</param>
    /// <param name="steps">Step of the central difference for each parameter, above zero.</param>
    /// <param name="maximumIterations">Accepted or tried steps at most.</param>
    /// <param name="smallestGain">Relative gain of a step below which the fit stands still.</param>
    public static LeastSquaresResult Solve(Action<double[], double[]> residuals, int residualCount, double[] start, double[] steps, int maximumIterations, double smallestGain)
    {
        ArgumentNullException.ThrowIfNull(residuals);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(steps);
        var parameters = (double[])start.Clone();
        var values = new double[residualCount];
        residuals(parameters, values);
        var sum = SumOfSquares(values);
        var damping = FirstDamping;
        var jacobian = Jacobian(residuals, residualCount, parameters, steps);
        for (var iteration = 0; iteration < maximumIterations && damping < LastDamping; iteration++)
        {
            var normal = jacobian.TransposeThisAndMultiply(jacobian);
            var gradient = jacobian.TransposeThisAndMultiply(Vector<double>.Build.Dense(values));
            var damped = normal.Clone();
            for (var i = 0; i < parameters.Length; i++)
            {
                damped[i, i] += damping * Math.Max(normal[i, i], double.Epsilon);
            }

            var step = damped.Solve(gradient);
            var trial = (double[])parameters.Clone();
            for (var i = 0; i < trial.Length; i++)
            {
                trial[i] -= step[i];
            }

            var trialValues = new double[residualCount];
            residuals(trial, trialValues);
            var trialSum = SumOfSquares(trialValues);
            if (!(trialSum < sum))
            {
                damping *= DampingFactor;
                continue;
            }

            var gain = (sum - trialSum) / Math.Max(sum, double.Epsilon);
            parameters = trial;
            values = trialValues;
            sum = trialSum;
            damping /= DampingFactor;
            jacobian = Jacobian(residuals, residualCount, parameters, steps);
            if (gain < smallestGain)
            {
                break;
            }
        }

        return new LeastSquaresResult(parameters, values, sum, jacobian);
    }

    private static Matrix<double> Jacobian(Action<double[], double[]> residuals, int count, double[] parameters, double[] steps)
    {
        var jacobian = Matrix<double>.Build.Dense(count, parameters.Length);
        var moved = (double[])parameters.Clone();
        var up = new double[count];
        var down = new double[count];
        for (var column = 0; column < parameters.Length; column++)
        {
            var step = steps[column];
            moved[column] = parameters[column] + step;
            residuals(moved, up);
            moved[column] = parameters[column] - step;
            residuals(moved, down);
            moved[column] = parameters[column];
            for (var row = 0; row < count; row++)
            {
                jacobian[row, column] = (up[row] - down[row]) / (2 * step);
            }
        }

        return jacobian;
    }

    private static double SumOfSquares(double[] values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return double.IsNaN(sum) ? double.PositiveInfinity : sum;
    }
}
