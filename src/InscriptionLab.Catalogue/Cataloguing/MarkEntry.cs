using System;
using System.Collections.Immutable;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Cataloguing;

/// <summary>The picture of one line, laid flat and turned to read from left to right.</summary>
/// <param name="Line">The line of the record, from 0.</param>
/// <param name="Picture">Grey levels.</param>
/// <param name="Boxes">Box of each letter in the picture, in the record's order (spaces left out): left, top, right, bottom in pixels.</param>
public sealed record MarkEntry(int Line, GrayImage Picture, ImmutableArray<ImmutableArray<double>> Boxes)
{
    /// <summary>Reads boxes as they are kept.</summary>
    /// <exception cref="InscriptionLabException">They are none that this program writes.</exception>
    internal static ImmutableArray<ImmutableArray<double>> BoxesOf(string json)
    {
        try
        {
            var boxes = JsonSerializer.Deserialize(json, CatalogueJson.Default.ImmutableArrayImmutableArrayDouble);
            return boxes.IsDefault || boxes.Any(box => box.IsDefault) ? throw new JsonException("There is no array.") : boxes;
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException)
        {
            throw new InscriptionLabException("The catalogue holds boxes of letters that are none: look for damage with ./lab catalogue check.", problem);
        }
    }
}
