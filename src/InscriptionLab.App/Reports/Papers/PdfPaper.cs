using System;
using System.Globalization;
using System.IO;
using System.Linq;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Puts a paper out as a PDF: A4, typefaces embedded, no need of any other program.</summary>
internal sealed class PdfPaper
{
    private const double Body = 9.5;
    private const double Small = 8;
    private const double NameColumn = 112;
    private const double Gap = 7;

    /// <summary>Digits of a SHA-256 hash.</summary>
    private const int HashDigits = 64;

    private readonly PdfSheet _sheet;

    private PdfPaper(PdfSheet sheet) => _sheet = sheet;

    internal static byte[] Of(Paper paper)
    {
        using var document = new PdfDocument();
        document.Info.Title = paper.Title;
        document.Info.Creator = paper.Program;
        document.Info.CreationDate = paper.Made.DateTime;
        document.Language = "en";
        var sheet = new PdfSheet(document);
        var writer = new PdfPaper(sheet);
        foreach (var part in paper.Blocks)
        {
            if (!sheet.IsFresh)
            {
                sheet.NewPage();
            }

            foreach (var block in part)
            {
                writer.Write(block);
            }
        }

        sheet.Feet(paper.Title, $"{paper.Program.Split('+')[0]}, {paper.Made.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}");
        using var file = new MemoryStream();
        document.Save(file);
        return file.ToArray();
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                Heading(heading);
                break;
            case Block.Sentences sentences:
                foreach (var text in sentences.Texts)
                {
                    _sheet.Need(Body * 1.4);
                    _sheet.Graphics.DrawRectangle(PdfSheet.Soft, PdfSheet.Left + 1, _sheet.Y + (Body * 0.62), 2.4, 2.4);
                    _sheet.Write(text, PdfFonts.Body(Body), PdfSheet.Ink, PdfSheet.Left + 10, _sheet.Width - 10);
                    _sheet.Y += 1.5;
                }

                _sheet.Y += Gap / 2;
                break;
            case Block.Aside aside:
                _sheet.Write(aside.Text, PdfFonts.Body(Small), PdfSheet.Soft, PdfSheet.Left, _sheet.Width);
                _sheet.Y += Gap / 2;
                break;
            case Block.Outcome outcome:
                Outcome(outcome);
                break;
            case Block.Lettering lettering:
                _sheet.Need(60);
                _sheet.Write(lettering.Text, PdfFonts.Lettering(14), PdfSheet.Ink, PdfSheet.Left, _sheet.Width);
                _sheet.Y += 2;
                break;
            case Block.Facts facts:
                foreach (var (name, value) in facts.Rows)
                {
                    Fact(name, value);
                }

                _sheet.Y += Gap;
                break;
            case Block.Grid grid:
                PdfGrid.Write(_sheet, grid);
                _sheet.Y += Gap;
                break;
            case Block.Figure figure:
                PdfFigure.Write(_sheet, figure.Picture);
                _sheet.Y += Gap;
                break;
            case Block.Letters letters:
                PdfLetters.Write(_sheet, letters);
                _sheet.Y += Gap / 2;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No way to print this block.");
        }
    }

    private void Heading(Block.Heading heading)
    {
        var size = heading.Rank switch { 1 => 17.0, 2 => 12.5, _ => Body };

        // A heading never stands alone at the foot of a page.
        _sheet.Need((size * 1.4) + (heading.Rank == 3 ? 30 : 90));
        _sheet.Y += _sheet.IsFresh ? 0 : heading.Rank == 3 ? 4 : 10;
        _sheet.Write(heading.Text, PdfFonts.Strong(size), PdfSheet.Ink, PdfSheet.Left, _sheet.Width);
        if (heading.Rank < 3)
        {
            _sheet.Graphics.DrawLine(new XPen(PdfSheet.Rule, 0.8), PdfSheet.Left, _sheet.Y + 1, PdfSheet.Left + _sheet.Width, _sheet.Y + 1);
            _sheet.Y += 6;
        }
        else
        {
            _sheet.Y += 1;
        }
    }

    private void Outcome(Block.Outcome outcome)
    {
        const double Across = 20;
        _sheet.Need(Across + Gap);
        var (left, top) = (PdfSheet.Left, _sheet.Y + 1);
        _sheet.Graphics.DrawEllipse(new XPen(XColor.FromArgb(0x1d, 0x1c, 0x1a), 1.2), left, top, Across, Across);
        var unequal = outcome.Sign == "\u2260";
        var sign = unequal ? "=" : outcome.Sign;
        var font = PdfFonts.Strong(14);
        _sheet.Graphics.DrawString(sign, font, PdfSheet.Ink, left + ((Across - _sheet.Measure(sign, font)) / 2), top + 15);
        if (unequal)
        {
            _sheet.Graphics.DrawLine(new XPen(XColor.FromArgb(0x1d, 0x1c, 0x1a), 1.4), left + 7.5, top + 15, left + 12.5, top + 5);
        }

        _sheet.Graphics.DrawString(outcome.Text, PdfFonts.Strong(12), PdfSheet.Ink, left + Across + 8, top + 14);
        _sheet.Y += Across + Gap;
    }

    private void Fact(string name, string value)
    {
        var width = _sheet.Width - NameColumn;
        var font = PdfFonts.Body(Body);
        _sheet.Need(Math.Min(4, _sheet.Lines(value, font, width).Count) * font.Size * 1.35);
        var top = _sheet.Y;
        _sheet.Graphics.DrawString(name, PdfFonts.Body(Small), PdfSheet.Soft, PdfSheet.Left, top + Body);
        foreach (var line in value.Split('\n'))
        {
            // A hash of 64 digits fits a line of its own, and none that begins with a name.
            var cut = line.Length > HashDigits && line[^(HashDigits + 1)] == '@' && line[^HashDigits..].All(char.IsAsciiHexDigitLower) ? line.Length - HashDigits - 1 : line.Length;
            _sheet.Write(line[..cut], font, PdfSheet.Ink, PdfSheet.Left + NameColumn, width);
            if (cut < line.Length)
            {
                _sheet.Write(line[(cut + 1)..], PdfFonts.Body(Small), PdfSheet.Soft, PdfSheet.Left + NameColumn, width);
                _sheet.Y += 1;
            }
        }

        _sheet.Y += 2.5;
        _sheet.Graphics.DrawLine(new XPen(PdfSheet.Rule, 0.4), PdfSheet.Left, _sheet.Y - 1, PdfSheet.Left + _sheet.Width, _sheet.Y - 1);
    }
}
