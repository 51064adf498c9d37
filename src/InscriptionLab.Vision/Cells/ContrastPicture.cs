using System;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Scales;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Vision.Cells;

/// <summary>Weighs the colour channels so that the two sides of an ellipse differ most against their own unevenness (R. A. Fisher's linear discriminant, 1936).</summary>
internal static class ContrastPicture
{
    /// <summary>Rings inside and outside the ellipse that are compared, as shares of its size: near, but clear of the blur.</summary>
    private static readonly double[] InsideRings = [0.94, 0.96, 0.98];
    private static readonly double[] OutsideRings = [1.02, 1.04, 1.06];
    private const int Directions = 240;

    /// <summary>Unevenness added to each channel, in linear light squared: below it a difference is noise.</summary>
    private const double Floor = 1e-4;

    /// <summary>Makes the picture. Its weights add up to one in size, so slopes remain comparable.</summary>
    internal static LightPicture Of(ColourImage image, FittedEllipse ellipse)
    {
        var inside = Statistics(image, ellipse, InsideRings);
        var outside = Statistics(image, ellipse, OutsideRings);
        var spread = inside.Covariance + outside.Covariance;
        for (var i = 0; i < ColourImage.Channels; i++)
        {
            spread[i, i] += Floor;
        }

        var weights = spread.Solve(inside.Mean - outside.Mean);
        var size = Math.Abs(weights[0]) + Math.Abs(weights[1]) + Math.Abs(weights[2]);
        return size > 0
            ? LightPicture.From(image, weights[0] / size, weights[1] / size, weights[2] / size)
            : LightPicture.From(image, 1.0 / 3, 1.0 / 3, 1.0 / 3);
    }

    private static (Vector<double> Mean, Matrix<double> Covariance) Statistics(ColourImage image, FittedEllipse ellipse, double[] rings)
    {
        var mean = Vector<double>.Build.Dense(ColourImage.Channels);
        var square = Matrix<double>.Build.Dense(ColourImage.Channels, ColourImage.Channels);
        var count = 0;
        foreach (var ring in rings)
        {
            var curve = ClosedCurve.Of(ellipse with { SemiMajor = ellipse.SemiMajor * ring, SemiMinor = ellipse.SemiMinor * ring }, Directions);
            foreach (var point in curve)
            {
                var (x, y) = ((int)Math.Round(point.At.X), (int)Math.Round(point.At.Y));
                if (x < 0 || y < 0 || x >= image.Width || y >= image.Height)
                {
                    continue;
                }

                var at = ColourImage.Channels * ((y * image.Width) + x);
                var colour = Vector<double>.Build.Dense(ColourImage.Channels);
                for (var c = 0; c < ColourImage.Channels; c++)
                {
                    colour[c] = SrgbLight.Of(image.Pixels[at + c]);
                }

                mean += colour;
                square += colour.OuterProduct(colour);
                count++;
            }
        }

        if (count == 0)
        {
            return (mean, square);
        }

        mean /= count;
        return (mean, (square / count) - mean.OuterProduct(mean));
    }
}
