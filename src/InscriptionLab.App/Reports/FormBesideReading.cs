using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Comparison;

namespace InscriptionLab.App.Reports;

/// <summary>Lays a form beside the letters that it was compared with.</summary>
internal static class FormBesideReading
{
    /// <summary>Gives the places in reading order, spaces included.</summary>
    internal static IReadOnlyList<AlignedPlace> Of(NearestForm nearest)
    {
        var form = Letters(nearest.Form.Form);
        var differences = nearest.Differences.ToLookup(difference => difference.FormIndex);
        var read = nearest.Agreements.ToLookup(agreement => agreement.FormIndex);
        var places = new List<AlignedPlace>();
        for (var i = 0; i <= form.Count; i++)
        {
            places.AddRange(differences[i].Where(difference => difference.Attested.Length == 0).Select(added => new AlignedPlace(string.Empty, added.Read, added)));
            if (i == form.Count)
            {
                break;
            }

            if (differences[i].FirstOrDefault(difference => difference.Attested.Length > 0) is { } found)
            {
                places.Add(new AlignedPlace(found.Attested, found.Read, found));
                i += Letters(found.Attested).Count - 1;
            }
            else
            {
                places.Add(new AlignedPlace(form[i], read[i].FirstOrDefault()?.Read ?? form[i], null, read[i].FirstOrDefault()));
            }
        }

        return places;
    }

    private static List<string> Letters(string text)
    {
        var letters = new List<string>();
        var walk = StringInfo.GetTextElementEnumerator(text);
        while (walk.MoveNext())
        {
            letters.Add(walk.GetTextElement());
        }

        return letters;
    }
}
