using System;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells;

/// <summary>Law of propagation for correlated inputs and several results (GUM, JCGM 100:2008, clauses 5.2 and H.2): values with their covariance.</summary>
public sealed class CorrelatedPropagation
{
    private readonly double[] _values;
    private readonly Matrix<double> _covariance;

    private CorrelatedPropagation(double[] values, Matrix<double> covariance) => (_values, _covariance) = (values, covariance);

    /// <summary>Gets the results at the inputs' estimates.</summary>
    public ReadOnlySpan<double> Values => _values;

    /// <summary>Propagates means of readings taken together: each row of readings holds one reading of every input (clause 5.2.3).</summary>
    /// <param name="readings">Readings, one row an observation, at least two.</param>
    /// <param name="results">Results for given inputs.</param>
    public static CorrelatedPropagation OfReadings(double[][] readings, Func<double[], double[]> results)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(results);
        if (readings.Length < 2)
        {
            throw new ArgumentException("A scatter needs two observations or more.", nameof(readings));
        }

        var all = Matrix<double>.Build.DenseOfRowArrays(readings);
        var means = all.ColumnSums() / readings.Length;
        var off = Matrix<double>.Build.Dense(all.RowCount, all.ColumnCount, (r, c) => all[r, c] - means[c]);
        var covariance = off.TransposeThisAndMultiply(off) / (readings.Length * (readings.Length - 1.0));
        return Of([.. means], covariance, results);
    }

    /// <summary>Gives the standard uncertainty of a result.</summary>
    public double StandardUncertainty(int result) => Math.Sqrt(_covariance[result, result]);

    /// <summary>Gives the correlation coefficient of two results.</summary>
    public double Correlation(int one, int other) => _covariance[one, other] / (StandardUncertainty(one) * StandardUncertainty(other));

    private static CorrelatedPropagation Of(double[] inputs, Matrix<double> covariance, Func<double[], double[]> results)
    {
        var values = results(inputs);
        var slopes = Matrix<double>.Build.Dense(values.Length, inputs.Length);
        for (var i = 0; i < inputs.Length; i++)
        {
            // A step of a thousandth of the input's own uncertainty keeps the difference straight and above rounding.
            var step = Math.Max(Math.Sqrt(covariance[i, i]) * 1e-3, double.Epsilon);
            var (up, down) = ((double[])inputs.Clone(), (double[])inputs.Clone());
            (up[i], down[i]) = (up[i] + step, down[i] - step);
            var (high, low) = (results(up), results(down));
            for (var r = 0; r < values.Length; r++)
            {
                slopes[r, i] = (high[r] - low[r]) / (2 * step);
            }
        }

        return new CorrelatedPropagation(values, slopes * covariance * slopes.Transpose());
    }
}
