using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.Assess.Scores;

/// <summary>Compares the reading of one photo with its truth.</summary>
internal static partial class TextScorer
{
    private static readonly char[] Stops = ['.', ',', ';', ':'];

    /// <summary>Scores one reading.</summary>
    /// <param name="truth">What was cut.</param>
    /// <param name="read">The lines as read.</param>
    /// <param name="hideHidden">True where letters that this photo cannot show are excused in the visible figures; false for the joint reading of a set.</param>
    internal static TextScore Score(TruthPhoto truth, IEnumerable<string> read, bool hideHidden = true)
    {
        var readLines = read.Select(Normalised).Where(line => line.Length > 0).ToList();
        var cutLines = truth.Lines.Select(Normalised).ToList();
        var cut = string.Join(' ', cutLines);
        var text = string.Join(' ', readLines);
        var (cutWords, readWords) = (Words(cut), Words(text));
        var hidden = Hidden(truth, hideHidden);
        var nameWords = truth.Maker is null ? [] : Words(truth.Maker);
        return new TextScore
        {
            Letters = Length(cut),
            Edits = EditDistance.Between(cut, text),
            EditsIgnoringCase = EditDistance.Between(Lower(cut), Lower(text)),
            LettersNoSpaces = Length(Solid(cut)),
            EditsNoSpaces = EditDistance.Between(Solid(cut), Solid(text)),
            LettersVisible = hidden.Count(letter => !letter),
            EditsVisible = EditDistance.Between(Solid(cut), hidden, Solid(text)),
            Words = cutWords.Count,
            WordsRight = EditDistance.CommonWords(cutWords, readWords),
            Lines = cutLines.Count,
            LinesRight = Found(cutLines, readLines),
            NameWords = nameWords.Count,
            NameWordsRight = Found(nameWords, readWords),
            Variant = truth is { Maker: { } maker, IsVariantOf: { } right } ? Fate(Words(maker), Words(right), readWords) : null,
        };
    }

    /// <summary>Gives a line with single spaces and none at its ends.</summary>
    internal static string Normalised(string line) => Spaces().Replace(line, " ").Trim();

    private static VariantFate Fate(List<string> cut, List<string> right, List<string> read)
    {
        var seen = read.Select(word => Lower(word).Trim(Stops)).ToHashSet(StringComparer.Ordinal);
        bool AllSeen(IEnumerable<string> words) => words.All(word => seen.Contains(Lower(word).Trim(Stops)));
        var wrongWords = cut.Where(word => !right.Contains(word)).ToList();
        var rightWords = right.Where(word => !cut.Contains(word)).ToList();
        return AllSeen(wrongWords) ? VariantFate.Kept
            : rightWords.Count > 0 && AllSeen(rightWords) ? VariantFate.Corrected
            : VariantFate.Misread;
    }

    private static List<bool> Hidden(TruthPhoto truth, bool hideHidden)
    {
        var hidden = truth.Letters.Where(letter => letter.Hidden).Select(letter => (letter.Line, letter.Index)).ToHashSet();
        return [.. truth.Lines.SelectMany((line, l) => line.EnumerateRunes()
            .Select((letter, i) => (Space: System.Text.Rune.IsWhiteSpace(letter), Hidden: hideHidden && hidden.Contains((l, i)))))
            .Where(letter => !letter.Space)
            .Select(letter => letter.Hidden)];
    }

    /// <summary>Counts how many of the wanted are there, each of them used once.</summary>
    private static int Found(IEnumerable<string> wanted, IEnumerable<string> there)
    {
        var left = there.ToList();
        return wanted.Count(left.Remove);
    }

    private static List<string> Words(string text) => [.. text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    private static string Solid(string text) => text.Replace(" ", string.Empty, StringComparison.Ordinal);

    private static int Length(string text) => text.EnumerateRunes().Count();

#pragma warning disable CA1308 // Lower case is what the published figures use; nothing is compared for identity or security.
    private static string Lower(string text) => text.ToLowerInvariant();
#pragma warning restore CA1308

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
