using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Nodes;

namespace InscriptionLab.Exchange;

/// <summary>All photos with their letters as one COCO file (object detection layout): a category for each letter, a box and an outline for each place.</summary>
internal static class CocoExport
{
    private const int LicenceNumber = 1;

    /// <summary>Gives the file.</summary>
    /// <param name="objects">The objects.</param>
    /// <param name="licence">Licence as the user gives it; null where none was given.</param>
    internal static string Of(IEnumerable<ExchangeObject> objects, string? licence)
    {
        var images = new JsonArray();
        var annotations = new JsonArray();
        var categories = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var photo in objects.SelectMany(shown => shown.Photos))
        {
            var image = images.Count + 1;
            images.Add(Image(image, photo, licence));
            foreach (var letter in (photo.Reading?.Lines ?? []).SelectMany(line => line.Placed))
            {
                if (!categories.TryGetValue(letter.Character, out var category))
                {
                    categories[letter.Character] = category = categories.Count + 1;
                }

                var (x, y, width, height) = ExchangeText.Box(letter.Quad, photo.Width, photo.Height);
                var outline = letter.Quad.Select(ExchangeText.FromCorner).Select(point => (X: Math.Clamp(point.X, 0, photo.Width), Y: Math.Clamp(point.Y, 0, photo.Height))).ToList();
                annotations.Add(new JsonObject
                {
                    ["id"] = annotations.Count + 1,
                    ["image_id"] = image,
                    ["category_id"] = category,
                    ["bbox"] = new JsonArray(x, y, width, height),
                    ["area"] = Math.Round(Area(outline), 2),
                    ["segmentation"] = new JsonArray(new JsonArray([.. outline.SelectMany(point => new JsonNode[] { point.X, point.Y })])),
                    ["iscrowd"] = 0,
                    ["score"] = letter.Probability,
                });
            }
        }

        return ExchangeText.Json(new JsonObject
        {
            ["info"] = new JsonObject { ["description"] = "Letters as a program read them, with its probability as score; not checked by people unless a correction says so" },
            ["licenses"] = licence is null ? [] : new JsonArray(new JsonObject { ["id"] = LicenceNumber, ["name"] = licence, ["url"] = string.Empty }),
            ["images"] = images,
            ["annotations"] = annotations,
            ["categories"] = new JsonArray([.. categories.OrderBy(category => category.Value).Select(category => new JsonObject { ["id"] = category.Value, ["name"] = category.Key, ["supercategory"] = "letter" })]),
        });
    }

    private static JsonObject Image(int number, ExchangePhoto photo, string? licence)
    {
        var image = new JsonObject { ["id"] = number, ["file_name"] = photo.FileName, ["width"] = photo.Width, ["height"] = photo.Height, ["sha256"] = photo.Sha256 };
        if (licence is not null)
        {
            image["license"] = LicenceNumber;
        }

        return image;
    }

    /// <summary>Gives the area inside an outline (the surveyor's formula), as the format wants it: of the outline, not of the box round it.</summary>
    private static double Area(List<(double X, double Y)> outline) =>
        Math.Abs(outline.Select((point, index) => (point, next: outline[(index + 1) % outline.Count])).Sum(pair => (pair.point.X * pair.next.Y) - (pair.next.X * pair.point.Y))) / 2;
}
