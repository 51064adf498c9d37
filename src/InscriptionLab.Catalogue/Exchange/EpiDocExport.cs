using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Readings;

namespace InscriptionLab.Exchange;

/// <summary>One object as an EpiDoc TEI edition (EpiDoc schema 9): diplomatic, nothing supplied or corrected; doubt and rivals are marked letter by letter.</summary>
internal static class EpiDocExport
{
    private static readonly XNamespace Tei = "http://www.tei-c.org/ns/1.0";

    internal static string Of(ExchangeObject shown) => ExchangeText.Xml(new XElement(
        Tei + "TEI",
        new XAttribute(XNamespace.Xml + "lang", "en"),
        Header(shown),
        new XElement(Tei + "text", new XElement(Tei + "body", Edition(shown), Commentary(shown)))));

    private static XElement Header(ExchangeObject shown) => new(
        Tei + "teiHeader",
        new XElement(
            Tei + "fileDesc",
            new XElement(Tei + "titleStmt", new XElement(Tei + "title", ExchangeText.Clean(shown.ShownTitle))),
            new XElement(Tei + "publicationStmt", new XElement(Tei + "p", "Written by InscriptionLab from photographs. Evidence, not a certificate.")),
            new XElement(
                Tei + "sourceDesc",
                new XElement(
                    Tei + "msDesc",
                    new XElement(Tei + "msIdentifier", new XElement(Tei + "idno", ExchangeText.Clean(shown.Key))),
                    new XElement(Tei + "physDesc", new XElement(Tei + "objectDesc", new XElement(Tei + "supportDesc", new XElement(Tei + "support", new XElement(Tei + "p", new XElement(Tei + "material", "brass"), " ", Dimensions(shown)), shown.Observations.Select(seen => new XElement(Tei + "p", ExchangeText.Clean(ObservationWords.Whole(seen))))))))))));

    private static IEnumerable<object> Dimensions(ExchangeObject shown) => shown.Measurements.Select(item => new XElement(
        Tei + "dimensions",
        new XAttribute("unit", "mm"),
        new XElement(
            Tei + "dim",
            new XAttribute("type", "diameter"),
            new XAttribute("subtype", item.Measured.Role),
            new XAttribute("atLeast", ExchangeText.Number(item.Measured.ValueMm - item.Measured.ExpandedMm)),
            new XAttribute("atMost", ExchangeText.Number(item.Measured.ValueMm + item.Measured.ExpandedMm)),
            ExchangeText.Number(item.Measured.ValueMm))));

    private static XElement Edition(ExchangeObject shown) => new(
        Tei + "div",
        new XAttribute("type", "edition"),
        new XAttribute(XNamespace.Xml + "lang", "und"),
        new XAttribute(XNamespace.Xml + "space", "preserve"),
        shown.Photos.Any(photo => photo.Reading is { Lines.Length: > 0 })
            ? shown.Photos.Where(photo => photo.Reading is { Lines.Length: > 0 }).Select((photo, index) => new XElement(
                Tei + "div",
                new XAttribute("type", "textpart"),
                new XAttribute("n", (index + 1).ToString(CultureInfo.InvariantCulture)),
                new XElement(Tei + "ab", photo.Reading!.Lines.SelectMany(Line))))
            : new XElement(Tei + "ab", new XElement(Tei + "gap", new XAttribute("reason", "illegible"), new XAttribute("extent", "unknown"), new XAttribute("unit", "line"))));

    private static IEnumerable<object> Line(ExchangeLine line)
    {
        yield return new XElement(Tei + "lb", new XAttribute("n", (line.Position + 1).ToString(CultureInfo.InvariantCulture)));
        for (var word = 0; word < line.Words.Length; word++)
        {
            if (word > 0)
            {
                yield return " ";
            }

            foreach (var letter in line.Words[word])
            {
                yield return Sign(letter);
            }
        }
    }

    private static object Sign(RecordLetter letter)
    {
        var options = new LeidenOptions();
        if (letter.Character == Letter.Unreadable)
        {
            return new XElement(Tei + "gap", new XAttribute("reason", "illegible"), new XAttribute("quantity", 1), new XAttribute("unit", "character"));
        }

        if (letter.Probability >= options.UnclearBelow.Value)
        {
            return ExchangeText.Clean(letter.Character);
        }

        var rivals = letter.Alternatives.Where(other => other.Character.Length > 0 && other.Probability >= options.ApparatusFrom.Value).Select(other => other.Character).ToImmutableArray();
        return rivals.IsEmpty
            ? Unclear(letter.Character)
            : new XElement(Tei + "choice", Unclear(letter.Character), rivals.Select(Unclear));
    }

    private static XElement Unclear(string character) => new(Tei + "unclear", ExchangeText.Clean(character));

    private static XElement Commentary(ExchangeObject shown) => new(
        Tei + "div",
        new XAttribute("type", "commentary"),
        new XElement(Tei + "p", "The edition above is what a program read in the photographs. What people read instead stands here and nowhere else."),
        shown.Photos.Where(photo => photo.Reading is not null).SelectMany(photo => photo.Reading!.Lines.Where(line => line.Correction is not null).Select(line => new XElement(
            Tei + "p",
            ExchangeText.Clean($"{photo.FileName}, line {line.Position + 1}: {line.Correction!.By} ({ExchangeText.Day(line.Correction.At)}) reads \"{line.Correction.Text}\". {line.Correction.Reason}")))));
}
