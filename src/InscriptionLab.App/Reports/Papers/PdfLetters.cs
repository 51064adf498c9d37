using System;
using System.IO;
using PdfSharp.Drawing;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Prints letters side by side: picture, reading, and the form's letter or how sure the reading is.</summary>
internal static class PdfLetters
{
    private const double PictureHeight = 24;
    private const double Narrowest = 17;
    private const double Widest = 44;
    private const double Space = 12;

    internal static void Write(PdfSheet sheet, Block.Letters letters)
    {
        var height = PictureHeight + 16 + (letters.WithForm ? 16 : 9) + 4;
        var right = PdfSheet.Left + sheet.Width;
        var left = PdfSheet.Left;
        sheet.Need(height);
        foreach (var cell in letters.Cells)
        {
            var isSpace = cell.Read.Trim().Length == 0 && cell.Form.Trim().Length == 0;
            var width = isSpace ? Space : cell.Picture is { } cut ? Math.Clamp(cut.Width * PictureHeight / cut.Height, Narrowest, Widest) : Narrowest;
            if (left + width > right)
            {
                sheet.Y += height;
                sheet.Need(height);
                left = PdfSheet.Left;
            }

            if (!isSpace)
            {
                One(sheet, cell, left, width, letters.WithForm);
            }

            left += width + 2;
        }

        sheet.Y += height;
    }

    private static void One(PdfSheet sheet, LetterCell cell, double left, double width, bool withForm)
    {
        var graphics = sheet.Graphics;
        var top = sheet.Y;
        var frame = new XRect(left, top, width, PictureHeight);
        if (cell.Picture is { } cut)
        {
            using var stream = new MemoryStream(cut.File);
            using var image = XImage.FromStream(stream);
            var scale = Math.Min(width / cut.Width, PictureHeight / cut.Height);
            graphics.DrawImage(image, left + ((width - (cut.Width * scale)) / 2), top + ((PictureHeight - (cut.Height * scale)) / 2), cut.Width * scale, cut.Height * scale);
        }
        else
        {
            graphics.DrawRectangle(new XPen(PdfSheet.Rule, 0.5), frame);
        }

        var brush = cell.Differs ? new XSolidBrush(PdfSheet.Differs) : PdfSheet.Ink;
        Centred(sheet, cell.Read.Length == 0 ? "\u00b7" : cell.Read, PdfFonts.Lettering(12), brush, left, width, top + PictureHeight + 12);
        if (withForm)
        {
            Centred(sheet, cell.Form.Length == 0 ? "\u00b7" : cell.Form, PdfFonts.Lettering(12), cell.Differs ? brush : PdfSheet.Soft, left, width, top + PictureHeight + 27);
            if (cell.Differs)
            {
                graphics.DrawRectangle(new XPen(PdfSheet.Differs, 0.9), left, top + PictureHeight + 1, width, 32);
            }
        }
        else
        {
            Centred(sheet, cell.Sure, PdfFonts.Body(5.5), PdfSheet.Soft, left, width, top + PictureHeight + 20);
        }
    }

    private static void Centred(PdfSheet sheet, string text, XFont font, XBrush brush, double left, double width, double baseline) =>
        sheet.Line(text, font, brush, left + ((width - sheet.Measure(text, font)) / 2), baseline);
}
