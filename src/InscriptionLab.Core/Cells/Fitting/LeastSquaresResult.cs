using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Where a least-squares fit came to rest.</summary>
public sealed class LeastSquaresResult
{
    private readonly double[] _parameters;
    private readonly double[] _residuals;

    internal LeastSquaresResult(double[] parameters, double[] residuals, double sumOfSquares, Matrix<double> jacobian)
    {
        _parameters = parameters;
        _residuals = residuals;
        SumOfSquares = sumOfSquares;
        Jacobian = jacobian;
    }

    /// <summary>Gets the parameters.</summary>
    public System.ReadOnlySpan<double> Parameters => _parameters;

    /// <summary>Gets the residuals at the parameters.</summary>
    public System.ReadOnlySpan<double> Residuals => _residuals;

    /// <summary>Gets the sum of the squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>Gets the norm of the residuals.</summary>
    public double ResidualNorm => System.Math.Sqrt(SumOfSquares);

    /// <summary>Gets the derivatives of the residuals by the parameters.</summary>
    internal Matrix<double> Jacobian { get; }

    /// <summary>Gives the covariance of the parameters for residuals of unit variance: the inverse of the normal matrix, scaled to a unit diagonal first since parameters differ in size by many powers of ten.</summary>
    internal Matrix<double> Covariance()
    {
        var normal = Jacobian.TransposeThisAndMultiply(Jacobian);
        var scales = normal.Diagonal().Map(v => v > 0 ? 1 / System.Math.Sqrt(v) : 1);
        var scaling = Matrix<double>.Build.DiagonalOfDiagonalVector(scales);
        return scaling * (scaling * normal * scaling).Inverse() * scaling;
    }

    /// <summary>Gives a copy of the parameters.</summary>
    internal double[] CopyParameters() => (double[])_parameters.Clone();
}
