using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Nodes;

namespace InscriptionLab.Exchange;

/// <summary>All photos with their letters as one COCO file (object detection layout): a category for each letter, a box and an outline for each place.</summary>
internal static class CocoExport
{
    internal static string Of(IEnumerable<ExchangeObject> objects)
    {
        var images = new JsonArray();
        var annotations = new JsonArray();
        var categories = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var photo in objects.SelectMany(shown => shown.Photos))
        {
            var image = images.Count + 1;
            images.Add(new JsonObject { ["id"] = image, ["file_name"] = photo.FileName, ["width"] = photo.Width, ["height"] = photo.Height, ["sha256"] = photo.Sha256 });
            foreach (var letter in (photo.Reading?.Lines ?? []).SelectMany(line => line.Placed))
            {
                if (!categories.TryGetValue(letter.Character, out var category))
                {
                    categories[letter.Character] = category = categories.Count + 1;
                }

                var (x, y, width, height) = ExchangeText.Box(letter.Quad, photo.Width, photo.Height);
                annotations.Add(new JsonObject
                {
                    ["id"] = annotations.Count + 1,
                    ["image_id"] = image,
                    ["category_id"] = category,
                    ["bbox"] = new JsonArray(x, y, width, height),
                    ["area"] = Math.Round(width * height, 2),
                    ["segmentation"] = new JsonArray(new JsonArray([.. letter.Quad.Select(ExchangeText.FromCorner).SelectMany(point => new JsonNode[] { point.X, point.Y })])),
                    ["iscrowd"] = 0,
                    ["score"] = letter.Probability,
                });
            }
        }

        return ExchangeText.Json(new JsonObject
        {
            ["info"] = new JsonObject { ["description"] = "Letters as a program read them, with its probability as score; not checked by people unless a correction says so" },
            ["images"] = images,
            ["annotations"] = annotations,
            ["categories"] = new JsonArray([.. categories.OrderBy(category => category.Value).Select(category => new JsonObject { ["id"] = category.Value, ["name"] = category.Key, ["supercategory"] = "letter" })]),
        });
    }
}
