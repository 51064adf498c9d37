using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Measures;

namespace InscriptionLab.Exchange;

/// <summary>One photo as PAGE XML (2019-07-15): region, lines, words and glyphs, each glyph with its rivals and their probabilities.</summary>
internal static class PageXmlExport
{
    private static readonly XNamespace Pc = "http://schema.primaresearch.org/PAGE/gts/pagecontent/2019-07-15";

    internal static string Of(ExchangePhoto photo)
    {
        var reading = photo.Reading ?? throw new ArgumentException("The photo has no reading.", nameof(photo));
        var lines = reading.Lines.Where(line => line.Outline.Length > 0).ToList();
        return ExchangeText.Xml(new XElement(
            Pc + "PcGts",
            new XElement(
                Pc + "Metadata",
                new XElement(Pc + "Creator", reading.Versions.Program),
                new XElement(Pc + "Created", ExchangeText.Moment(reading.MadeAt)),
                new XElement(Pc + "LastChange", ExchangeText.Moment(reading.MadeAt))),
            new XElement(
                Pc + "Page",
                new XAttribute("imageFilename", ExchangeText.Clean(photo.FileName)),
                new XAttribute("imageWidth", photo.Width),
                new XAttribute("imageHeight", photo.Height),
                lines.Count == 0 ? null : new XElement(
                    Pc + "TextRegion",
                    new XAttribute("id", "lettering"),
                    Coords(lines.SelectMany(line => line.Outline), photo, boxed: true),
                    lines.Select(line => Line(line, photo))))));
    }

    private static XElement Line(ExchangeLine line, ExchangePhoto photo)
    {
        var id = Name("line", line.Position + 1);
        return new XElement(
            Pc + "TextLine",
            new XAttribute("id", id),
            Coords(line.Outline, photo),
            line.Words.Select((word, index) => Word(word, $"{id}-{Name("word", index + 1)}", photo)),
            Equivalents(line.Correction is { } correction ? [(line.Read, null), (correction.Text, null)] : [(line.Read, null)]));
    }

    private static XElement? Word(IReadOnlyList<RecordLetter> word, string id, ExchangePhoto photo)
    {
        var placed = word.Where(letter => letter.Quad.Length == 4).ToList();
        return placed.Count == 0 ? null : new XElement(
            Pc + "Word",
            new XAttribute("id", id),
            Coords([placed[0].Quad[0], placed[^1].Quad[1], placed[^1].Quad[2], placed[0].Quad[3]], photo),
            placed.Select((letter, index) => new XElement(
                Pc + "Glyph",
                new XAttribute("id", $"{id}-{Name("glyph", index + 1)}"),
                Coords(letter.Quad, photo),
                Equivalents(letter.Alternatives.Select(other => (other.Character, (double?)other.Probability)).Prepend((letter.Character, letter.Probability))))),
            Equivalents([(string.Concat(word.Select(letter => letter.Character)), null)]));
    }

    private static IEnumerable<XElement> Equivalents(IEnumerable<(string Text, double? Probability)> texts) => texts.Select((item, index) => new XElement(
        Pc + "TextEquiv",
        new XAttribute("index", index),
        item.Probability is { } probability ? new XAttribute("conf", ExchangeText.Number(Math.Clamp(probability, 0, 1))) : null,
        new XElement(Pc + "Unicode", ExchangeText.Clean(item.Text))));

    /// <summary>Writes pixels by their column and row, as the standard does: the pixel that holds the point.</summary>
    private static XElement Coords(IEnumerable<PixelPoint> points, ExchangePhoto photo, bool boxed = false)
    {
        var pixels = points.Select(point => (X: (int)Math.Clamp(Math.Round(point.X), 0, photo.Width - 1), Y: (int)Math.Clamp(Math.Round(point.Y), 0, photo.Height - 1))).ToList();
        if (boxed)
        {
            var (left, right, top, bottom) = (pixels.Min(pixel => pixel.X), pixels.Max(pixel => pixel.X), pixels.Min(pixel => pixel.Y), pixels.Max(pixel => pixel.Y));
            pixels = [(left, top), (right, top), (right, bottom), (left, bottom)];
        }

        return new XElement(Pc + "Coords", new XAttribute("points", string.Join(' ', pixels.Select(pixel => string.Create(CultureInfo.InvariantCulture, $"{pixel.X},{pixel.Y}")))));
    }

    private static string Name(string kind, int number) => string.Create(CultureInfo.InvariantCulture, $"{kind}{number}");
}
