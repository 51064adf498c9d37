using System.Collections.Generic;
using System.Globalization;

namespace InscriptionLab.Readings;

/// <summary>Cuts text into what a reader calls letters: extended grapheme clusters (Unicode Standard Annex 29), never normalised.</summary>
internal static class Graphemes
{
    /// <summary>Gives the clusters in order.</summary>
    internal static IReadOnlyList<string> Of(string text)
    {
        var clusters = new List<string>(text.Length);
        var walk = StringInfo.GetTextElementEnumerator(text);
        while (walk.MoveNext())
        {
            clusters.Add(walk.GetTextElement());
        }

        return clusters;
    }
}
