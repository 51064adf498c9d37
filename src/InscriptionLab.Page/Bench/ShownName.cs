using System.Globalization;
using System.Linq;

namespace InscriptionLab.Page.Bench;

/// <summary>Makes a name that a stranger gave fit to be shown: the last part of a path, one line, no control signs, not too long. It is never used to open a file.</summary>
internal static class ShownName
{
    internal static string Of(string? given, string otherwise, int longest)
    {
        var plain = Line((given ?? string.Empty).Split('/', '\\').Last(), longest);
        return plain.Length == 0 || plain.All(character => character == '.') ? otherwise : plain;
    }

    /// <summary>Gives words of a stranger as one line without control signs, not too long.</summary>
    internal static string Line(string? given, int longest) =>
        string.Concat((given ?? string.Empty).EnumerateRunes()
            .Where(rune => System.Text.Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned))
            .Take(longest)
            .Select(rune => rune.ToString())).Trim();
}
