using System.Globalization;
using System.Linq;

namespace InscriptionLab.Page.Bench;

/// <summary>Makes a name that a stranger gave fit to be shown: the last part of a path, one line, no control signs, not too long. It is never used to open a file.</summary>
internal static class ShownName
{
    internal static string Of(string? given, string otherwise, int longest)
    {
        var last = (given ?? string.Empty).Split('/', '\\').Last();
        var plain = string.Concat(last.EnumerateRunes()
            .Where(rune => System.Text.Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned))
            .Take(longest)
            .Select(rune => rune.ToString())).Trim();
        return plain.Length == 0 || plain.All(character => character == '.') ? otherwise : plain;
    }
}
