using System;
using System.Collections.Immutable;
using System.Linq;
using PdfSharp.Drawing;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Prints a table; each column is as wide as its words ask for, the widest give way.</summary>
internal static class PdfGrid
{
    private const double Size = 8;
    private const double Leading = 1.3;
    private const double Between = 10;

    /// <summary>Least width of a column, in points.</summary>
    private const double Least = 46;

    internal static void Write(PdfSheet sheet, Block.Grid grid)
    {
        var (plain, strong) = (PdfFonts.Body(Size), PdfFonts.Strong(Size));
        var widths = Widths(sheet, grid, plain, strong);
        Row(sheet, grid.Head, widths, strong);
        foreach (var row in grid.Rows)
        {
            Row(sheet, row, widths, plain);
        }
    }

    private static double[] Widths(PdfSheet sheet, Block.Grid grid, XFont plain, XFont strong)
    {
        var widths = grid.Head.Select((head, i) => Math.Max(sheet.Measure(head, strong), grid.Rows.Select(row => sheet.Measure(row[i], plain)).DefaultIfEmpty(0).Max())).ToArray();
        for (var spare = widths.Sum() + (Between * (widths.Length - 1)) - sheet.Width; spare > 0.1; spare = widths.Sum() + (Between * (widths.Length - 1)) - sheet.Width)
        {
            var widest = Array.IndexOf(widths, widths.Max());
            if (widths[widest] <= Least)
            {
                break;
            }

            var next = widths.Where((_, i) => i != widest).DefaultIfEmpty(0).Max();
            widths[widest] = Math.Max(Least, Math.Max(next - 1, widths[widest] - spare));
        }

        return widths;
    }

    private static void Row(PdfSheet sheet, ImmutableArray<string> cells, double[] widths, XFont font)
    {
        var lines = cells.Select((cell, i) => sheet.Lines(cell, font, widths[i])).ToList();
        var height = (lines.Max(cell => cell.Count) * Size * Leading) + 3;
        sheet.Need(height);
        var left = PdfSheet.Left;
        for (var i = 0; i < lines.Count; i++)
        {
            for (var row = 0; row < lines[i].Count; row++)
            {
                sheet.Line(lines[i][row], font, PdfSheet.Ink, left, sheet.Y + Size + (row * Size * Leading));
            }

            left += widths[i] + Between;
        }

        sheet.Y += height;
        sheet.Graphics.DrawLine(new XPen(PdfSheet.Rule, 0.4), PdfSheet.Left, sheet.Y - 1, PdfSheet.Left + sheet.Width, sheet.Y - 1);
    }
}
