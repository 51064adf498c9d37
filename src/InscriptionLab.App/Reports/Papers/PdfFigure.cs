using System;
using System.IO;
using System.Linq;
using PdfSharp.Drawing;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Prints a picture with its marks, its scale bar and its caption.</summary>
internal static class PdfFigure
{
    private const double Tallest = 215;
    private const double CaptionSize = 8;
    private const double HalfPixel = 0.5;

    internal static void Write(PdfSheet sheet, PaperPicture picture)
    {
        var scale = Math.Min(sheet.Width / picture.Width, Tallest / picture.Height);
        var (width, height) = (picture.Width * scale, picture.Height * scale);
        var font = PdfFonts.Body(CaptionSize);
        var bar = picture.PixelsPerMillimetre is { } density ? ScaleBar.For(picture.Width / density) : null;
        sheet.Need(height + (sheet.Lines(picture.Caption, font, sheet.Width).Count * CaptionSize * 1.35) + (bar is null ? 4 : 20));
        var (left, top) = (PdfSheet.Left, sheet.Y);
        using (var stream = new MemoryStream(picture.File))
        using (var image = XImage.FromStream(stream))
        {
            sheet.Graphics.DrawImage(image, left, top, width, height);
        }

        var state = sheet.Graphics.Save();
        sheet.Graphics.IntersectClip(new XRect(left, top, width, height));
        foreach (var mark in picture.Marks)
        {
            XPoint[] points = [.. mark.Points.Select(point => new XPoint(left + ((point.X + HalfPixel) * scale), top + ((point.Y + HalfPixel) * scale)))];
            Draw(sheet.Graphics, new XPen(XColors.Black, 1.1), points, mark.Closed);
            Draw(sheet.Graphics, new XPen(XColor.FromArgb(0x59, 0xe0, 0xff), 0.5), points, mark.Closed);
        }

        sheet.Graphics.Restore(state);
        sheet.Y += height + 3;
        if (bar is { } known && picture.PixelsPerMillimetre is { } perMillimetre)
        {
            var length = known.Millimetres * perMillimetre * scale;
            sheet.Graphics.DrawRectangle(PdfSheet.Ink, left, sheet.Y + 3, length, 2.2);
            sheet.Graphics.DrawString(known.Text, font, PdfSheet.Ink, left + length + 5, sheet.Y + 8);
            sheet.Y += 14;
        }

        sheet.Write(picture.Caption, font, PdfSheet.Soft, left, sheet.Width);
    }

    private static void Draw(XGraphics graphics, XPen pen, XPoint[] points, bool closed)
    {
        if (closed)
        {
            graphics.DrawPolygon(pen, points);
        }
        else
        {
            graphics.DrawLines(pen, points);
        }
    }
}
