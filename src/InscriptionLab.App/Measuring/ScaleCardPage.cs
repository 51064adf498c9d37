using System.Globalization;
using InscriptionLab.Cells;
using InscriptionLab.Vision.Scales;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Fonts.Standard14Fonts;
using UglyToad.PdfPig.Writer;

namespace InscriptionLab.App.Measuring;

/// <summary>Draws the scale card at true size on a page of A4 (ISO 216: 210 by 297 mm), as lines and areas, so that nothing is resampled.</summary>
internal sealed class ScaleCardPage
{
    /// <summary>Points of a page in a millimetre: 72 to the inch (ISO 32000).</summary>
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double PageHeight = 297;

    /// <summary>Where the card's parts stand on the page, in millimetres from its top left corner.</summary>
    private const double Left = 55;
    private const double MarkersTop = 50;
    private const double RulesTop = 88;
    private const double GreysTop = 122;
    private const double CheckTop = 140;

    private readonly PdfPageBuilder _page;
    private readonly PdfDocumentBuilder.AddedFont _font;

    private ScaleCardPage(PdfPageBuilder page, PdfDocumentBuilder.AddedFont font) => (_page, _font) = (page, font);

    /// <summary>Makes the document.</summary>
    internal static byte[] Make()
    {
        using var document = new PdfDocumentBuilder();
        var font = document.AddStandard14Font(Standard14Font.Helvetica);
        var card = new ScaleCardPage(document.AddPage(PageSize.A4), font);
        card.Draw();
        return document.Build();
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

    private void Area(double x, double y, double width, double height, byte grey)
    {
        _page.SetTextAndFillColor(grey, grey, grey);
        _page.SetStrokeColor(grey, grey, grey);
        _page.DrawRectangle(At(x, y + height), width * PointsPerMillimetre, height * PointsPerMillimetre, 0, true);
    }

    private void Text(double x, double y, double size, string text)
    {
        _page.SetTextAndFillColor(0, 0, 0);
        _page.AddText(text, size, At(x, y), _font);
    }

    private static PdfPoint At(double x, double y) => new(x * PointsPerMillimetre, (PageHeight - y) * PointsPerMillimetre);
}
