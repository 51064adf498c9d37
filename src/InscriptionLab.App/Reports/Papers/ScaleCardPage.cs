using System.Globalization;
using System.IO;
using InscriptionLab.Cells;
using InscriptionLab.Vision.Scales;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Draws the scale card at true size on a page of A4 (ISO 216: 210 by 297 mm), as lines and areas, so that nothing is resampled.</summary>
internal sealed class ScaleCardPage
{
    /// <summary>Millimetres in a point: 72 to the inch (ISO 32000).</summary>
    private const double MillimetresPerPoint = 25.4 / 72;

    /// <summary>Where the card's parts stand on the page, in millimetres from its top left corner.</summary>
    private const double Left = 55;
    private const double MarkersTop = 50;
    private const double RulesTop = 88;
    private const double GreysTop = 122;
    private const double CheckTop = 140;

    private readonly XGraphics _page;

    private ScaleCardPage(XGraphics page) => _page = page;

    /// <summary>Makes the document.</summary>
    internal static byte[] Make()
    {
        using var document = new PdfDocument();
        var page = document.AddPage();
        page.Size = PageSize.A4;
        using (var graphics = XGraphics.FromPdfPage(page, XGraphicsUnit.Millimeter))
        {
            new ScaleCardPage(graphics).Draw();
        }

        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    private void Draw()
    {
        Text(Left, 30, 12, "Scale card");
        Text(Left, 37, 8, "Print at 100 % (\"actual size\"), never \"fit to page\", on stiff matt paper. Printers lie: measure the check line");
        Text(Left, 41, 8, "with calipers and pass what it measures, for example  --scale card:99.7mm");
        foreach (var (marker, x, y) in ScaleCard.Markers)
        {
            Marker(marker, Left + x, MarkersTop + y);
        }

        MillimetreRule();
        InchRule();
        Greys();
        CheckLine();
        Text(Left, 158, 8, "Lay the card level with the rim of the cell, flat and wholly in the photo, and photograph both from straight above.");
        Text(Left, 162, 8, "Do not force a cell that will not unscrew, and never point a lens or telescope at the Sun.");
    }

    private void Marker(int marker, double x, double y)
    {
        const double Cell = ScaleCard.MarkerMillimetres / MarkerPattern.Cells;
        var pattern = MarkerPattern.Of(marker);
        for (var row = 0; row < MarkerPattern.Cells; row++)
        {
            // Neighbouring black cells are one area: between two, printers leave a hair of white.
            for (var from = 0; from < MarkerPattern.Cells; from++)
            {
                var to = from;
                while (to < MarkerPattern.Cells && pattern[(row * MarkerPattern.Cells) + to])
                {
                    to++;
                }

                if (to > from)
                {
                    var overlap = row + 1 < MarkerPattern.Cells && Covered(pattern, row + 1, from, to) ? 0.02 : 0;
                    Area(x + (from * Cell), y + (row * Cell), (to - from) * Cell, Cell + overlap, 0);
                    from = to;
                }
            }
        }
    }

    private static bool Covered(System.Collections.Immutable.ImmutableArray<bool> pattern, int row, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            if (!pattern[(row * MarkerPattern.Cells) + i])
            {
                return false;
            }
        }

        return true;
    }

    private void MillimetreRule()
    {
        for (var i = 0; i <= 100; i++)
        {
            var length = i % 10 == 0 ? 6 : i % 5 == 0 ? 4.5 : 3;
            Area(Left + i - 0.075, RulesTop, 0.15, length, 0);
            if (i % 10 == 0)
            {
                Text(Left + i - 1, RulesTop + 9, 7, (i / 10).ToString(CultureInfo.InvariantCulture));
            }
        }

        Text(Left + 103, RulesTop + 4, 7, "cm");
    }

    private void InchRule()
    {
        const double Sixteenth = 25.4 / 16;
        for (var i = 0; i <= 62; i++)
        {
            var length = i % 16 == 0 ? 6 : i % 8 == 0 ? 5 : i % 4 == 0 ? 4 : i % 2 == 0 ? 3 : 2;
            Area(Left + (i * Sixteenth) - 0.075, RulesTop + 14, 0.15, length, 0);
            if (i % 16 == 0)
            {
                Text(Left + (i * Sixteenth) - 1, RulesTop + 23, 7, (i / 16).ToString(CultureInfo.InvariantCulture));
            }
        }

        Text(Left + 103, RulesTop + 18, 7, "in");
    }

    private void Greys()
    {
        // Printed greys are steps to judge exposure by, not a colour standard.
        byte[] levels = [0, 64, 118, 170, 213, 243];
        for (var i = 0; i < levels.Length; i++)
        {
            Area(Left + (i * ScaleCard.PitchMillimetres), GreysTop, ScaleCard.MarkerMillimetres, 10, levels[i]);
        }
    }

    private void CheckLine()
    {
        var length = ScaleCard.CheckLength.Millimetres;
        Area(Left, CheckTop, 0.15, 8, 0);
        Area(Left + length - 0.15, CheckTop, 0.15, 8, 0);
        Area(Left, CheckTop + 4, length, 0.15, 0);
        Text(Left + 25, CheckTop + 3, 7, "check line, outside to outside: 100 mm if the printer is true");
    }

    private void Area(double x, double y, double width, double height, byte grey) =>
        _page.DrawRectangle(new XSolidBrush(XColor.FromArgb(grey, grey, grey)), x, y, width, height);

    private void Text(double x, double y, double points, string text) =>
        _page.DrawString(text, PdfFonts.Body(points * MillimetresPerPoint), XBrushes.Black, x, y);
}
