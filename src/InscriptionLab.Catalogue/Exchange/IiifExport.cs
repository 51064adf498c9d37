using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json.Nodes;
using InscriptionLab.Cataloguing;
using InscriptionLab.Measures;

namespace InscriptionLab.Exchange;

/// <summary>One object as an IIIF Presentation 3 manifest: a canvas for each photo, and on it Web Annotations: lines as transcriptions, letters with their rivals as comments.</summary>
/// <param name="baseAddress">Address under which manifest and photos will be published.</param>
internal sealed class IiifExport(Uri baseAddress)
{
    internal string Of(ExchangeObject shown)
    {
        var manifest = At("manifest/" + Uri.EscapeDataString(shown.Key));
        var json = new JsonObject
        {
            ["@context"] = "http://iiif.io/api/presentation/3/context.json",
            ["id"] = manifest,
            ["type"] = "Manifest",
            ["label"] = Text(shown.ShownTitle),
            ["items"] = new JsonArray([.. shown.Photos.Select(Canvas)]),
        };
        if (!shown.Observations.IsEmpty)
        {
            json["metadata"] = new JsonArray([.. shown.Observations.Select(seen => new JsonObject { ["label"] = Text(ObservationWords.Plain(seen.Feature)), ["value"] = Text($"{ObservationWords.Plain(seen.Answer)} ({seen.By}, {ExchangeText.Day(seen.MadeAt)})") })]);
        }

        return ExchangeText.Json(json);
    }

    private JsonObject Canvas(ExchangePhoto photo)
    {
        var canvas = At("canvas/" + photo.Sha256);
        var image = new JsonObject { ["id"] = At($"photo/{photo.Sha256}/{Uri.EscapeDataString(photo.FileName)}"), ["type"] = "Image", ["format"] = Format(photo.FileName), ["width"] = photo.Width, ["height"] = photo.Height };
        List<JsonNode> lettering = [.. (photo.Reading?.Lines ?? []).Where(line => line.Outline.Length > 0).SelectMany(line => Annotations(canvas, line))];
        var shown = new JsonObject
        {
            ["id"] = canvas,
            ["type"] = "Canvas",
            ["label"] = Text(photo.FileName),
            ["width"] = photo.Width,
            ["height"] = photo.Height,
            ["items"] = new JsonArray(Page(canvas + "/painting", [new JsonObject
            {
                ["id"] = canvas + "/painting/1",
                ["type"] = "Annotation",
                ["motivation"] = "painting",
                ["body"] = image,
                ["target"] = canvas,
            }])),
        };
        if (lettering.Count > 0)
        {
            shown["annotations"] = new JsonArray(Page(canvas + "/lettering", lettering));
        }

        return shown;
    }

    private static IEnumerable<JsonNode> Annotations(string canvas, ExchangeLine line)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{canvas}/line/{line.Position + 1}");
        yield return Annotation(name, "supplementing", line.Read, canvas, line.Outline);
        if (line.Correction is { } correction)
        {
            yield return Annotation(name + "/correction", "commenting", $"{correction.By} ({ExchangeText.Day(correction.At)}) reads: {correction.Text}", canvas, line.Outline);
        }

        for (var index = 0; index < line.Placed.Length; index++)
        {
            yield return Annotation(string.Create(CultureInfo.InvariantCulture, $"{name}/letter/{index + 1}"), "commenting", Said(line.Placed[index]), canvas, line.Placed[index].Quad);
        }
    }

    private static string Said(RecordLetter letter) => string.Join("; ", letter.Alternatives
        .Select(other => string.Create(CultureInfo.InvariantCulture, $"or {(other.Character.Length == 0 ? "nothing" : other.Character)} {other.Probability:0.###}"))
        .Prepend(string.Create(CultureInfo.InvariantCulture, $"{letter.Character} {letter.Probability:0.###}")));

    private static JsonObject Annotation(string id, string motivation, string text, string canvas, IEnumerable<PixelPoint> outline) => new()
    {
        ["id"] = id,
        ["type"] = "Annotation",
        ["motivation"] = motivation,
        ["body"] = new JsonObject { ["type"] = "TextualBody", ["value"] = text, ["format"] = "text/plain" },
        ["target"] = new JsonObject
        {
            ["type"] = "SpecificResource",
            ["source"] = canvas,
            ["selector"] = new JsonObject { ["type"] = "SvgSelector", ["value"] = Svg(outline) },
        },
    };

    private static string Svg(IEnumerable<PixelPoint> outline) =>
        "<svg xmlns=\"http://www.w3.org/2000/svg\"><polygon points=\"" + string.Join(' ', outline.Select(ExchangeText.FromCorner).Select(point => $"{ExchangeText.Number(point.X)},{ExchangeText.Number(point.Y)}")) + "\"/></svg>";

    private static JsonObject Page(string id, IEnumerable<JsonNode> items) => new() { ["id"] = id, ["type"] = "AnnotationPage", ["items"] = new JsonArray([.. items]) };

    private static JsonObject Text(string text) => new() { ["en"] = new JsonArray(text) };

    private static string Format(string file) => System.IO.Path.GetExtension(file).ToUpperInvariant() switch
    {
        ".PNG" => "image/png",
        ".WEBP" => "image/webp",
        ".TIF" or ".TIFF" => "image/tiff",
        ".BMP" => "image/bmp",
        ".HEIC" or ".HEIF" => "image/heic",
        ".AVIF" => "image/avif",
        _ => "image/jpeg",
    };

    private string At(string path) => new Uri(baseAddress, path).AbsoluteUri;
}
