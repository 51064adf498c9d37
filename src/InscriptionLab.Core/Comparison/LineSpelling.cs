using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>Spells a line as it was read, or with letters of a form put in place of letters read.</summary>
internal static class LineSpelling
{
    /// <summary>Gives the line as read; a letter that cannot be read by its most probable candidate.</summary>
    internal static string Free(LineReading line) => string.Concat(line.Letters.Select(Free));

    /// <summary>Gives the line with every given difference made good.</summary>
    internal static string With(LineReading line, IReadOnlyCollection<LetterDifference> differences)
    {
        var spelt = new List<string>();
        for (var index = 0; index <= line.Letters.Length; index++)
        {
            var here = differences.Where(difference => difference.LetterIndex == index).ToArray();
            spelt.AddRange(here.Where(difference => difference.Read.Length == 0).OrderBy(difference => difference.FormIndex).Select(difference => InCaseOf(line, index, difference.Attested)));
            if (index < line.Letters.Length)
            {
                var replaced = here.FirstOrDefault(difference => difference.Read.Length > 0);
                spelt.Add(replaced is null ? Free(line.Letters[index]) : InCaseOf(line, index, replaced.Attested));
            }
        }

        return string.Concat(spelt);
    }

    private static string Free(Letter letter) =>
        letter.Character == Letter.Unreadable && letter.Alternatives is [var first, ..] ? first.Character : letter.Character;

    /// <summary>Writes letters as the word round a place is written, so that capitals stay capitals.</summary>
    private static string InCaseOf(LineReading line, int index, string letters)
    {
        var before = line.Letters.Take(index).Reverse().TakeWhile(letter => !letter.IsSpace).Reverse().ToArray();
        var after = line.Letters.Skip(index).TakeWhile(letter => !letter.IsSpace);
        return WordCases.Of(before.Concat(after).Select(letter => letter.Character)) switch
        {
            WordCase.Capitals => letters.ToUpperInvariant(),
            WordCase.Small => string.Concat(letters.Select(char.ToLowerInvariant)),
            WordCase.CapitalFirst when before.Length > 0 => string.Concat(letters.Select(char.ToLowerInvariant)),
            WordCase.CapitalFirst when letters.Length > 0 => letters[..1].ToUpperInvariant() + string.Concat(letters.Skip(1).Select(char.ToLowerInvariant)),
            _ => letters,
        };
    }
}
