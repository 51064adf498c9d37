using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Lines;

/// <summary>Lays a middle line, a height and two ends through the cells of one line.</summary>
internal static class LineTracer
{
    /// <summary>Times the fit is repeated without the cells that lie off it.</summary>
    private const int Rounds = 3;

    /// <summary>A cell whose middle lies further off than this share of the height does not take part in the next round.</summary>
    private const double Stray = 0.2;

    /// <summary>Lines shorter than this many heights are taken as straight: a bow would only follow single letters.</summary>
    private const double ShortestBowed = 5;

    /// <summary>The share of the cells, those nearest to an end of the line, that say where the end is.</summary>
    private const double NearEnd = 0.2;

    /// <summary>The end may lie this share of the height off the outermost cell.</summary>
    private const double BeyondCells = 0.5;

    /// <summary>From this ratio of length to width on, the shape of the cells says which way a line runs. The cells cover half the height, so a word as long as 1.5 heights reaches it.</summary>
    private const double LongShape = 3;

    /// <summary>Cosine of the angle up to which shape and cells agree: 30 degrees.</summary>
    private const double SameDirection = 0.87;

    /// <summary>A bulge above this share of the height is no engraver's line and is cut back.</summary>
    private const double LargestBow = 0.5;

    /// <summary>Traces a line. The cells may disagree about the sense in which it reads, never about the direction it runs in; the majority decides.</summary>
    /// <param name="members">Cells of the line, at least one.</param>
    internal static LineTrace Trace(IReadOnlyList<LineCell> members)
    {
        var (cosine, sine) = Direction(members);
        var shape = CoreShape.Of(members);
        if (shape.Elongation >= LongShape && Math.Abs((shape.Cosine * cosine) + (shape.Sine * sine)) < SameDirection)
        {
            // The cells lie along one line and say that it reads across itself: the shape is the surer witness.
            (cosine, sine) = (shape.Cosine, shape.Sine);
            members = [.. members.Select(shape.Realigned)];
        }

        var cells = members.Select(cell => (cell.Cosine * cosine) + (cell.Sine * sine) < 0 ? cell.Turned() : cell).ToList();
        var height = Median.Of(cells.Select(cell => cell.Top + cell.Bottom));

        // Each cell puts the middle line half way between the ink top and bottom it sees.
        var points = cells.Select(cell =>
        {
            var down = (cell.Bottom - cell.Top) / 2;
            var (x, y) = (cell.X - (sine * down), cell.Y + (cosine * down));
            return (Along: (x * cosine) + (y * sine), Down: (y * cosine) - (x * sine), Weight: cell.Core);
        }).ToList();
        var start = -End([.. cells.Select(cell => (-(cell.X * cosine) - (cell.Y * sine), cell.Before))], height);
        var end = End([.. cells.Select(cell => ((cell.X * cosine) + (cell.Y * sine), cell.Behind))], height);
        if (end - start < 1)
        {
            end = start + 1;
        }

        var curve = Fit(points, start, end, height);
        var (first, last) = (curve.Level - curve.Tilt, curve.Level + curve.Tilt);
        return new LineTrace(
            new PixelPoint((start * cosine) - (first * sine), (start * sine) + (first * cosine)),
            new PixelPoint((end * cosine) - (last * sine), (end * sine) + (last * cosine)),
            curve.Bow,
            height,
            cells.Average(cell => cell.Core));
    }

    /// <summary>Averages directions as axes, by their doubled angles, then takes the sense of the majority.</summary>
    private static (double Cosine, double Sine) Direction(IReadOnlyList<LineCell> cells)
    {
        var doubledCosine = cells.Sum(cell => cell.Core * ((cell.Cosine * cell.Cosine) - (cell.Sine * cell.Sine)));
        var doubledSine = cells.Sum(cell => cell.Core * 2 * cell.Cosine * cell.Sine);
        var angle = Math.Atan2(doubledSine, doubledCosine) / 2;
        var (cosine, sine) = (Math.Cos(angle), Math.Sin(angle));
        return cells.Sum(cell => cell.Core * ((cell.Cosine * cosine) + (cell.Sine * sine))) < 0 ? (-cosine, -sine) : (cosine, sine);
    }

    /// <summary>Fits down = level + tilt u + bow (1 - u²) over u = -1 at the start to 1 at the end, by weighted least squares without strays.</summary>
    private static (double Level, double Tilt, double Bow) Fit(List<(double Along, double Down, double Weight)> points, double start, double end, double height)
    {
        var bowed = end - start >= ShortestBowed * height;
        var fit = (Level: Median.Of(points.Select(point => point.Down)), Tilt: 0.0, Bow: 0.0);
        var kept = points;
        for (var round = 0; round < Rounds && kept.Count >= 3; round++)
        {
            fit = Solve(kept, start, end, bowed);
            var (level, tilt, bow) = fit;
            var near = points.Where(point => Math.Abs(point.Down - Value(point.Along, start, end, level, tilt, bow)) <= Stray * height).ToList();
            kept = near.Count >= 3 ? near : kept;
        }

        return (fit.Level, fit.Tilt, Math.Clamp(fit.Bow, -LargestBow * height, LargestBow * height));
    }

    private static double Value(double along, double start, double end, double level, double tilt, double bow)
    {
        var u = Math.Clamp((2 * (along - start) / (end - start)) - 1, -1, 1);
        return level + (tilt * u) + (bow * (1 - (u * u)));
    }

    private static (double Level, double Tilt, double Bow) Solve(List<(double Along, double Down, double Weight)> points, double start, double end, bool bowed)
    {
        // Normal equations of at most three unknowns, with a trifle on the diagonal so that a stub of a line stays level.
        var terms = bowed ? 3 : 2;
        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(terms, terms);
        var right = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(terms);
        Span<double> basis = stackalloc double[3];
        foreach (var (along, down, weight) in points)
        {
            var u = Math.Clamp((2 * (along - start) / (end - start)) - 1, -1, 1);
            (basis[0], basis[1], basis[2]) = (1, u, 1 - (u * u));
            for (var i = 0; i < terms; i++)
            {
                right[i] += weight * basis[i] * down;
                for (var j = 0; j < terms; j++)
                {
                    matrix[i, j] += weight * basis[i] * basis[j];
                }
            }
        }

        for (var i = 1; i < terms; i++)
        {
            matrix[i, i] += 1e-3 * points.Count;
        }

        var solved = matrix.Solve(right);
        return (solved[0], solved[1], bowed ? solved[2] : 0);
    }

    /// <summary>Gives where the line ends: the median of what its nearest cells say, never far from the outermost cell.</summary>
    private static double End((double Along, double ToEnd)[] cells, double height)
    {
        var outermost = cells.Max(cell => cell.Along);
        var said = Median.Of(cells.OrderByDescending(cell => cell.Along).Take(1 + (int)(NearEnd * cells.Length)).Select(cell => cell.Along + cell.ToEnd));
        return Math.Clamp(said, outermost - (BeyondCells * height), outermost + (BeyondCells * height));
    }
}
