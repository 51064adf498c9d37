using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Vision.Lines;

/// <summary>The principal axis of a component's cells. The cells of a line fill the inner half of its height.</summary>
/// <param name="X">Centre of gravity in the strip.</param>
/// <param name="Y">Centre of gravity in the strip.</param>
/// <param name="Cosine">Direction of the longer axis.</param>
/// <param name="Sine">Direction of the longer axis.</param>
/// <param name="Length">Extent along it, of a rectangle with the same second moments.</param>
/// <param name="Width">Extent across it, likewise.</param>
internal sealed record CoreShape(double X, double Y, double Cosine, double Sine, double Length, double Width)
{
    /// <summary>A line's cells fill this share of its height.</summary>
    private const double CoreShare = 0.5;

    /// <summary>Gets length over width.</summary>
    internal double Elongation => Length / Math.Max(Width, 1e-6);

    /// <summary>Measures a component.</summary>
    internal static CoreShape Of(IReadOnlyList<LineCell> cells)
    {
        var (x, y) = (cells.Average(cell => cell.X), cells.Average(cell => cell.Y));
        var xx = cells.Average(cell => (cell.X - x) * (cell.X - x));
        var yy = cells.Average(cell => (cell.Y - y) * (cell.Y - y));
        var xy = cells.Average(cell => (cell.X - x) * (cell.Y - y));
        var angle = Math.Atan2(2 * xy, xx - yy) / 2;
        var spread = Math.Sqrt(((xx - yy) * (xx - yy) / 4) + (xy * xy));

        // A rectangle of side a has the second moment a squared over 12.
        var (longer, shorter) = (((xx + yy) / 2) + spread, Math.Max(0, ((xx + yy) / 2) - spread));
        return new CoreShape(x, y, Math.Cos(angle), Math.Sin(angle), Math.Sqrt(12 * longer), Math.Sqrt(12 * shorter));
    }

    /// <summary>Gives what a cell would say if the line ran along this axis and were as high as its cells show.</summary>
    internal LineCell Realigned(LineCell cell)
    {
        var (along, down) = (((cell.X - X) * Cosine) + ((cell.Y - Y) * Sine), ((cell.Y - Y) * Cosine) - ((cell.X - X) * Sine));
        var half = Width / CoreShare / 2;
        return cell with
        {
            Cosine = Cosine,
            Sine = Sine,
            Top = Math.Max(0, half + down),
            Bottom = Math.Max(0, half - down),
            Before = Math.Max(0, (Length / 2) + along),
            Behind = Math.Max(0, (Length / 2) - along),
        };
    }
}
