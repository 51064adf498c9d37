using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml;
using System.Xml.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Exchange;

/// <summary>How texts and numbers are written in every form.</summary>
internal static class ExchangeText
{
    /// <summary>From the centre of the top-left pixel to the picture's outer corner, from where the standards count.</summary>
    private const double ToCorner = 0.5;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly XmlWriterSettings Settings = new() { Indent = false, Encoding = new UTF8Encoding(false), NewLineChars = "\n" };

    internal static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    internal static string Day(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    internal static string Moment(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);

    /// <summary>Gives a point counted from the picture's outer corner.</summary>
    internal static (double X, double Y) FromCorner(PixelPoint point) => (Math.Round(point.X + ToCorner, 2), Math.Round(point.Y + ToCorner, 2));

    /// <summary>Gives the box round points, counted from the outer corner, not beyond the picture: left, top, width, height.</summary>
    internal static (double X, double Y, double Width, double Height) Box(IEnumerable<PixelPoint> points, int width, int height)
    {
        var corners = points.Select(FromCorner).ToList();
        var (left, right) = (Math.Clamp(corners.Min(point => point.X), 0, width), Math.Clamp(corners.Max(point => point.X), 0, width));
        var (top, bottom) = (Math.Clamp(corners.Min(point => point.Y), 0, height), Math.Clamp(corners.Max(point => point.Y), 0, height));
        return (left, top, Math.Round(right - left, 2), Math.Round(bottom - top, 2));
    }

    internal static string Json(JsonNode node) => node.ToJsonString(Indented) + "\n";

    /// <summary>Gives an XML file; letters that XML cannot carry become U+FFFD.</summary>
    internal static string Xml(XElement root)
    {
        using var text = new Utf8Text();
        using (var writer = XmlWriter.Create(text, Settings))
        {
            new XDocument(new XDeclaration("1.0", "utf-8", null), root).Save(writer);
        }

        return text.ToString() + "\n";
    }

    internal static string Clean(string text) => string.Concat(text.EnumerateRunes().Select(rune =>
        rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value) ? "\uFFFD" : rune.ToString()));

    /// <summary>Gives a name that every file system takes.</summary>
    internal static string FileName(string key)
    {
        var name = string.Concat(key.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.' ? letter : '_')).Trim('.');
        return name == key && name.Length is > 0 and < 100 ? name : $"{(name.Length > 40 ? name[..40] : name)}-{Cataloguing.Fingerprint.OfText(key)[..8]}";
    }

    /// <summary>A text that says of itself that it is UTF-8, as the file will be.</summary>
    private sealed class Utf8Text() : System.IO.StringWriter(CultureInfo.InvariantCulture)
    {
        public override Encoding Encoding => Settings.Encoding;
    }
}
