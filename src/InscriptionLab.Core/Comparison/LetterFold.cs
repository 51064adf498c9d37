using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Globalization;

namespace InscriptionLab.Comparison;

/// <summary>What counts as the same letter in a comparison: case and shape (long s, raised letters) are folded, accents and everything else are not.</summary>
internal static class LetterFold
{
    internal const string Space = " ";

    /// <summary>Letters and marks in another shape, each before the plain one.</summary>
    private static readonly FrozenDictionary<string, string> Shapes = new[]
    {
        "ſs", "ªa", "ºo", "ᵃa", "ᵇb", "ᶜc", "ᵈd", "ᵉe", "ᶠf", "ᵍg", "ʰh", "ⁱi", "ʲj", "ᵏk", "ˡl", "ᵐm", "ⁿn", "ᵒo", "ᵖp", "ʳr", "ˢs", "ᵗt",
        "ᵘu", "ᵛv", "ʷw", "ˣx", "ʸy", "ᶻz", "⁰0", "¹1", "²2", "³3", "⁴4", "⁵5", "⁶6", "⁷7", "⁸8", "⁹9", "’'", "‘'", "‐-", "‑-", "–-",
    }.ToFrozenDictionary(pair => pair[..1], pair => pair[1..], StringComparer.Ordinal);

    /// <summary>Gives the letter without case and shape.</summary>
    internal static string Of(string letter) => Plain(letter).ToUpperInvariant();

    /// <summary>Gives the letter without shape, case kept.</summary>
    internal static string Plain(string letter) => Shapes.GetValueOrDefault(letter, letter);

    /// <summary>Tells whether a letter is in another shape than the plain one.</summary>
    internal static bool IsShaped(string letter) => Shapes.ContainsKey(letter);

    /// <summary>Tells whether a letter is neither letter, digit, ampersand nor space.</summary>
    internal static bool IsPunctuation(string letter) => letter is not (Space or "&" or "") && !IsLetterOrDigit(letter);

    internal static bool IsUpper(string letter) => letter.Length > 0 && CharUnicodeInfo.GetUnicodeCategory(letter, 0) is UnicodeCategory.UppercaseLetter;

    internal static bool IsLower(string letter) => letter.Length > 0 && CharUnicodeInfo.GetUnicodeCategory(letter, 0) is UnicodeCategory.LowercaseLetter;

    private static bool IsLetterOrDigit(string letter) => CharUnicodeInfo.GetUnicodeCategory(letter, 0) is
        UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter or UnicodeCategory.TitlecaseLetter or UnicodeCategory.ModifierLetter
        or UnicodeCategory.OtherLetter or UnicodeCategory.DecimalDigitNumber or UnicodeCategory.LetterNumber or UnicodeCategory.OtherNumber;
}
