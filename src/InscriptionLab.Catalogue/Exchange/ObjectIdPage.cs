using System;
using System.Collections.Generic;
using System.Linq;
using System.Net;
using System.Text;

namespace InscriptionLab.Exchange;

/// <summary>One object on one page under the headings of Object ID (the standard for describing cultural objects, ICOM): what the photos say is filled in, the rest is left to be written in.</summary>
internal static class ObjectIdPage
{
    private const string Style = "body{font:16px/1.5 Georgia,serif;max-width:48rem;margin:2rem auto;padding:0 1rem;color:#222}table{border-collapse:collapse;width:100%}th{text-align:left;vertical-align:top;width:14rem}th,td{border-bottom:1px solid #bbb;padding:.4rem .6rem}.open{color:#888}@media print{body{margin:0}}";

    internal static string Of(ExchangeObject shown)
    {
        var page = new StringBuilder($"<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Object ID: {Safe(shown.ShownTitle)}</title><style>{Style}</style></head><body>\n<h1>{Safe(shown.ShownTitle)}</h1>\n<table>\n");
        Row(page, "Inventory number", [shown.Key]);
        Row(page, "Type of object", []);
        Row(page, "Materials and techniques", ["Brass; engraved lettering"]);
        Row(page, "Measurements", shown.Measurements.Select(item => $"{item.Measured.Role}: {item.Measured.Statement}"));
        Row(page, "Inscriptions and markings", shown.Photos.Where(photo => photo.Reading is not null).SelectMany(photo => photo.Reading!.Lines.SelectMany(line => Lines(photo, line))));
        Row(page, "Distinguishing features", [.. shown.Note is { } note ? [note] : Array.Empty<string>(), .. shown.Observations.Select(seen => $"{ObservationWords.Of(seen)} ({seen.By}, {ExchangeText.Day(seen.MadeAt)})")]);
        Row(page, "Title", shown.Title is { } title ? [title] : []);
        Row(page, "Subject", []);
        Row(page, "Date or period", shown.Observations.Where(seen => seen.IsDated).Select(seen => $"{ObservationWords.Years(seen)}, after the {ObservationWords.Of(seen)} ({seen.Source})"));
        Row(page, "Maker", []);
        Row(page, "Photographs", shown.Photos.Select(photo => $"{photo.FileName} (SHA-256 {photo.Sha256})"));
        page.Append("</table>\n<p>Lettering as a program read it in the photographs, letter by letter and uncorrected; ? stands for a letter that is cut but cannot be seen. The maker is left open on purpose: a name that is cut is not yet a maker.</p>\n</body></html>\n");
        return page.ToString();
    }

    private static IEnumerable<string> Lines(ExchangePhoto photo, ExchangeLine line)
    {
        yield return $"{line.Read} ({photo.FileName}, line {line.Position + 1})";
        if (line.Correction is { } correction)
        {
            yield return $"{correction.By} ({ExchangeText.Day(correction.At)}) reads: {correction.Text}";
        }
    }

    private static void Row(StringBuilder page, string heading, IEnumerable<string> values)
    {
        var shown = string.Join("<br>", values.Select(Safe));
        page.Append("<tr><th>").Append(heading).Append("</th><td>").Append(shown.Length > 0 ? shown : "<span class=\"open\">to be written in</span>").Append("</td></tr>\n");
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
