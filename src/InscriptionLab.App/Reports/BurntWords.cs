using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Readings;

namespace InscriptionLab.App.Reports;

/// <summary>Which letters of a line are blown out, in one sentence.</summary>
internal static class BurntWords
{
    /// <summary>Gives the sentence of a line; null where none of it is burnt out.</summary>
    internal static string? Of(LineReading line, int index, ImmutableArray<BurntPlace> places)
    {
        var here = places.IsDefault ? [] : places.Where(place => place.Line == index).OrderBy(place => place.Letter).ToList();
        var letters = here.FindAll(place => place.Part == BurntPart.Letter);
        var parts = new List<string>();
        if (letters.Count > 0)
        {
            var named = string.Join(", ", letters.Select(place => $"'{line.Letters[place.Letter].Character}' ({Number(line, place.Letter)})"));
            parts.Add(letters.Count == 1 ? $"This letter is blown out: {named}. What was read there rests on what little is left." : $"These letters are blown out: {named}. What was read there rests on what little is left.");
        }

        var hidden = here.Where(place => place.Part != BurntPart.Letter).Select(place => place.Part switch
        {
            BurntPart.Before => "before the first letter",
            BurntPart.Behind => "after the last letter",
            _ => $"in the gap after letter {Number(line, place.Letter - 1)}",
        }).ToList();
        if (hidden.Count > 0)
        {
            parts.Add($"The metal is blown out {string.Join(" and ", hidden)}: letters may be hidden there.");
        }

        return parts.Count == 0 ? null : string.Join(' ', parts);
    }

    /// <summary>Gives a letter's number as a person counts, spaces left out.</summary>
    private static int Number(LineReading line, int letter) => line.Letters.Take(letter + 1).Count(one => !one.IsSpace);
}
