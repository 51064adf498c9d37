using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.App.Reports;

/// <summary>Lays a form beside the line that it was compared with, letter by letter.</summary>
internal static class Alignment
{
    /// <summary>Gives the places in reading order, spaces included.</summary>
    internal static IReadOnlyList<AlignedPlace> Of(NearestForm nearest, Reading reading)
    {
        var letters = reading.Lines[nearest.LineIndex].Letters;
        var differences = nearest.Differences.ToLookup(difference => difference.LetterIndex);
        var places = new List<AlignedPlace>();
        for (var i = 0; i <= letters.Length; i++)
        {
            places.AddRange(differences[i].Where(difference => difference.Read.Length == 0).Select(missing => new AlignedPlace(missing.Attested, string.Empty, missing)));
            if (i < letters.Length)
            {
                var difference = differences[i].FirstOrDefault(found => found.Read.Length > 0);
                places.Add(new AlignedPlace(difference is null ? letters[i].Character : difference.Attested, letters[i].Character, difference));
            }
        }

        return places;
    }
}
