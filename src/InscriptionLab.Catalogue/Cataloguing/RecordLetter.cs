using System.Collections.Immutable;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Measures;

namespace InscriptionLab.Cataloguing;

/// <summary>One letter of a record.</summary>
/// <param name="Character">The letter, "?" where it cannot be seen.</param>
/// <param name="Probability">How likely it is, 0 to 1.</param>
/// <param name="Alternatives">What else it may be; the empty string means "no letter here".</param>
/// <param name="Quad">Four corners in the photo, top-left first as the reader sees it; empty where the record has none.</param>
public sealed record RecordLetter(
    string Character,
    double Probability,
    ImmutableArray<(string Character, double Probability)> Alternatives,
    ImmutableArray<PixelPoint> Quad)
{
    internal static RecordLetter From(JsonElement letter) => new(
        RecordContent.Text(letter, "char"),
        RecordContent.Child(letter, "probability")?.GetDouble() ?? 0,
        RecordContent.Each(letter, "alternatives", other => (RecordContent.Text(other, "char"), RecordContent.Child(other, "probability")?.GetDouble() ?? 0)),
        RecordContent.Each(letter, "quad", corner => new PixelPoint(corner.EnumerateArray().First().GetDouble(), corner.EnumerateArray().Last().GetDouble())));
}
