using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.Evidence;

/// <summary>The words of a reading as they are searched: capitals, no punctuation; a word with a letter in doubt is left out and parts its neighbours.</summary>
internal sealed class WordsRead
{
    private const string InDoubt = "?";

    /// <summary>Stands for a letter in doubt: a letter by its category, so that the search key keeps it, and in no word of the tables.</summary>
    private const string DoubtMark = "\u02BC";

    private const string NumberSign = "NO";
    private const int DigitsOfYear = 4;

    private readonly ImmutableArray<ImmutableArray<string>> _lines;

    internal WordsRead(Reading reading, double readableLetter) =>
        _lines = [.. reading.Lines.Select(line => Words(line, readableLetter)).Where(words => !words.IsEmpty)];

    /// <summary>Tells whether words stand together on a line, in any case and punctuation.</summary>
    internal bool Has(string words) => Has(SearchKey.Of(Graphemes.Of(words).Select(LetterFold.Of)).Split(' '), mustBeWholeLine: false);

    internal bool Has(DatedWording wording) => Has(wording.Words.Split(' '), wording.MustBeWholeLine);

    private bool Has(string[] sought, bool mustBeWholeLine) =>
        _lines.Any(line => mustBeWholeLine
            ? line.AsSpan().SequenceEqual(sought)
            : Enumerable.Range(0, Math.Max(0, line.Length - sought.Length + 1)).Any(at => line.AsSpan(at, sought.Length).SequenceEqual(sought)));

    /// <summary>Gives the numbers that look like years, a number behind "No." left out.</summary>
    internal IEnumerable<int> Years(int first, int last) =>
        from line in _lines
        from index in Enumerable.Range(0, line.Length)
        where line[index].Length == DigitsOfYear && (index == 0 || line[index - 1] != NumberSign)
        let year = int.TryParse(line[index], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0
        where year >= first && year <= last
        select year;

    private static ImmutableArray<string> Words(LineReading line, double readableLetter)
    {
        var key = SearchKey.Of(line.Letters.Select(letter => Fold(letter, readableLetter)));
        return [.. key.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Contains(DoubtMark, StringComparison.Ordinal) ? InDoubt : word)];
    }

    private static string Fold(Letter letter, double readableLetter)
    {
        if (letter.Character == Letter.Unreadable)
        {
            return DoubtMark;
        }

        var fold = LetterFold.Of(letter.Character);
        var probability = letter.Probability.Value + letter.Alternatives.Where(other => LetterFold.Of(other.Character) == fold).Sum(other => other.Probability.Value);
        return letter.IsSpace || LetterFold.IsPunctuation(letter.Character) || probability >= readableLetter ? fold : DoubtMark;
    }
}
