using System;

namespace InscriptionLab.Cataloguing;

/// <summary>Finds a text inside another where some letters may differ (P. H. Sellers, "The theory and computation of evolutionary distances", J. Algorithms 1, 1980).</summary>
internal static class NearText
{
    /// <summary>Gives the least number of letters to change, add or leave out so that <paramref name="sought"/> stands somewhere in <paramref name="text"/>.</summary>
    internal static int Edits(ReadOnlySpan<char> sought, ReadOnlySpan<char> text)
    {
        var column = sought.Length < 128 ? stackalloc int[sought.Length + 1] : new int[sought.Length + 1];
        for (var row = 0; row <= sought.Length; row++)
        {
            column[row] = row;
        }

        var best = column[^1];
        foreach (var letter in text)
        {
            var diagonal = column[0];
            for (var row = 1; row <= sought.Length; row++)
            {
                var above = column[row - 1];
                var changed = diagonal + (sought[row - 1] == letter ? 0 : 1);
                diagonal = column[row];
                column[row] = Math.Min(changed, Math.Min(diagonal, above) + 1);
            }

            best = Math.Min(best, column[^1]);
        }

        return best;
    }
}
