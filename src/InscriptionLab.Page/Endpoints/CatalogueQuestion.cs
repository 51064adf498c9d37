using System;
using System.Globalization;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Microsoft.AspNetCore.Http;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Reads a search of the catalogue from an address.</summary>
internal static class CatalogueQuestion
{
    /// <summary>Gives the search.</summary>
    /// <param name="asked">What stands behind the question mark.</param>
    /// <param name="most">Most results.</param>
    /// <exception cref="InscriptionLabException">A number or a day is none.</exception>
    internal static SearchQuery Of(IQueryCollection asked, int most)
    {
        string? Text(string name) => asked[name].ToString() is { Length: > 0 } text ? text : null;
        double? Number(string name) => Text(name) is not { } text ? null
            : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number
            : throw new InscriptionLabException($"{text} is no number.");
        DateTimeOffset? Day(string name) => Text(name) is not { } text ? null
            : DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var day) ? day
            : throw new InscriptionLabException($"{text} is no date; write it like 2026-03-01.");
        int? Year(string name) => Text(name) is not { } text ? null
            : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is > 0 and < 10_000 ? year
            : throw new InscriptionLabException($"{text} is no year; write it like 1790.");
        return new SearchQuery
        {
            Text = Text("text"),
            Near = Text("near"),
            Edits = (int)(Number("edits") ?? new SearchQuery().Edits),
            Pattern = Text("pattern"),
            Alternatives = Text("alternatives") is not null,
            Maker = Text("maker"),
            Outcome = Text("outcome"),
            ObjectKey = Text("object"),
            From = Day("from"),
            Before = Day("before"),
            Role = Text("role") ?? new SearchQuery().Role,
            FromMm = Number("fromMm"),
            ToMm = Number("toMm"),
            Feature = Text("seen"),
            Answer = Text("answer"),
            FromYear = Year("fromYear"),
            ToYear = Year("toYear"),
            InTrash = Text("trash") is not null,
            Most = most,
        };
    }
}
