using System;
using System.Collections.Generic;
using System.Text;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Pages that fill from top to bottom. Lengths are points (1/72 inch).</summary>
internal sealed class PdfSheet
{
    private const double Margin = 51;
    private const char DotBelow = '\u0323';

    private readonly PdfDocument _document;
    private XGraphics _graphics = null!;
    private XSize _size;

    internal PdfSheet(PdfDocument document)
    {
        _document = document;
        NewPage();
    }

    internal static XBrush Ink { get; } = new XSolidBrush(XColor.FromArgb(0x1d, 0x1c, 0x1a));

    internal static XBrush Soft { get; } = new XSolidBrush(XColor.FromArgb(0x5c, 0x58, 0x50));

    internal static XColor Rule { get; } = XColor.FromArgb(0xcf, 0xc9, 0xbd);

    internal static XColor Differs { get; } = XColor.FromArgb(0x9a, 0x24, 0x18);

    internal XGraphics Graphics => _graphics;

    /// <summary>Gets or sets where the next thing goes.</summary>
    internal double Y { get; set; }

    internal static double Left => Margin;

    internal double Width => _size.Width - (2 * Margin);

    internal double Bottom => _size.Height - Margin - 14;

    /// <summary>Gets a value indicating whether nothing is on the page yet.</summary>
    internal bool IsFresh => Y <= Margin;

    internal void NewPage()
    {
        _graphics?.Dispose();
        var page = _document.AddPage();
        page.Size = PageSize.A4;
        _graphics = XGraphics.FromPdfPage(page);
        _size = new XSize(page.Width.Point, page.Height.Point);
        Y = Margin;
    }

    /// <summary>Goes to a new page where a height does not fit on this one.</summary>
    internal void Need(double height)
    {
        if (Y + height > Bottom && !IsFresh)
        {
            NewPage();
        }
    }

    /// <summary>Writes text from <paramref name="left"/> in lines of a width, over pages where it must.</summary>
    internal void Write(string text, XFont font, XBrush brush, double left, double width, double leading = 1.35)
    {
        foreach (var line in Lines(text, font, width))
        {
            Need(font.Size * leading);
            Line(line, font, brush, left, Y + font.Size);
            Y += font.Size * leading;
        }
    }

    /// <summary>Writes one line on a baseline. Dots below are drawn, because a typeface without its positioning rules cannot place them.</summary>
    internal void Line(string line, XFont font, XBrush brush, double left, double baseline)
    {
        var plain = new StringBuilder();
        foreach (var letter in line)
        {
            if (letter != DotBelow)
            {
                plain.Append(letter);
                continue;
            }

            var before = _graphics.MeasureString(plain.ToString(0, Math.Max(0, plain.Length - 1)), font).Width;
            var with = _graphics.MeasureString(plain.ToString(), font).Width;
            var dot = font.Size * 0.1;
            _graphics.DrawEllipse(brush, left + ((before + with) / 2) - (dot / 2), baseline + (font.Size * 0.13), dot, dot);
        }

        _graphics.DrawString(plain.ToString(), font, brush, left, baseline);
    }

    /// <summary>Breaks text into lines; a word longer than a line is broken inside.</summary>
    internal List<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = string.Empty;
            foreach (var word in paragraph.Split(' '))
            {
                var tried = line.Length == 0 ? word : line + " " + word;
                if (Measure(tried, font) <= width)
                {
                    line = tried;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = word;
                while (Measure(line, font) > width && line.Length > 1)
                {
                    var fits = 1;
                    while (fits < line.Length && Measure(line[..(fits + 1)], font) <= width)
                    {
                        fits++;
                    }

                    lines.Add(line[..fits]);
                    line = line[fits..];
                }
            }

            lines.Add(line);
        }

        return lines;
    }

    internal double Measure(string text, XFont font) => _graphics.MeasureString(text.Replace(DotBelow.ToString(), string.Empty, StringComparison.Ordinal), font).Width;

    /// <summary>Writes title, program, day and page number at the foot of every page.</summary>
    internal void Feet(string left, string right)
    {
        _graphics.Dispose();
        var font = PdfFonts.Body(7.5);
        for (var i = 0; i < _document.PageCount; i++)
        {
            using var graphics = XGraphics.FromPdfPage(_document.Pages[i]);
            var y = _size.Height - Margin + 6;
            graphics.DrawLine(new XPen(Rule, 0.5), Margin, y - 11, _size.Width - Margin, y - 11);
            graphics.DrawString(left, font, Soft, Margin, y);
            var number = FormattableString.Invariant($"{right}, page {i + 1} of {_document.PageCount}");
            graphics.DrawString(number, font, Soft, _size.Width - Margin - graphics.MeasureString(number, font).Width, y);
        }
    }
}
