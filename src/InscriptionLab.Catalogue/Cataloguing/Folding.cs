using System.Globalization;
using System.Text;

namespace InscriptionLab.Cataloguing;

/// <summary>Folds text for searching only: capitals and small letters alike, long s as s, marks above letters left out. What is kept is never folded.</summary>
public static class Folding
{
    private const char LongS = 'ſ';

    /// <summary>Folds a text.</summary>
    public static string Of(string text)
    {
        System.ArgumentNullException.ThrowIfNull(text);
        var folded = new StringBuilder(text.Length);
        foreach (var letter in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark)
            {
                folded.Append(letter == LongS ? 'S' : char.ToUpperInvariant(letter));
            }
        }

        return folded.ToString().Normalize(NormalizationForm.FormC);
    }
}
