using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;

namespace InscriptionLab.Assess.Findings;

/// <summary>The spelling that a finding asserts: the attested form with only those letters changed that the photo is said to speak against.</summary>
internal static class NamedSpelling
{
    internal static string Of(NearestForm nearest)
    {
        var against = nearest.SpellingDifferences.Where(difference => difference.Log10Ratio <= -new JudgeOptions().DifferingLog10Ratio).ToLookup(difference => difference.FormIndex);
        var letters = Letters(nearest.Form.Form);
        var spelt = new List<string>();
        for (var index = 0; index <= letters.Count; index++)
        {
            spelt.AddRange(against[index].Where(difference => difference.Attested.Length == 0).Select(Cut));
            if (index == letters.Count)
            {
                break;
            }

            var replaced = against[index].FirstOrDefault(difference => difference.Attested.Length > 0);
            spelt.Add(replaced is null ? letters[index] : Cut(replaced));
            index += replaced is { Attested: var attested } ? Letters(attested).Count - 1 : 0;
        }

        return string.Concat(spelt);
    }

    private static List<string> Letters(string text)
    {
        var elements = StringInfo.GetTextElementEnumerator(text);
        var letters = new List<string>();
        while (elements.MoveNext())
        {
            letters.Add(elements.GetTextElement());
        }

        return letters;
    }

    private static string Cut(LetterDifference difference) => difference.Read == Letter.Unreadable ? difference.Rival : difference.Read;
}
