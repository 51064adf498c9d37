using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Evidence;

/// <summary>
/// How far apart the letters of a name stand, over the height of its capitals: the boxes of the letters in the line's picture, in which the surface is laid flat, straight
/// and in one scale both ways, so that no scale in millimetres is needed.
/// </summary>
internal static class LetterSpacing
{
    /// <summary>Fewest steps from letter to letter; of fewer, wide and narrow letters do not even out.</summary>
    private const int FewestSteps = 3;

    /// <summary>Gives the distance from letter to letter inside the words, over the median height of the capitals; null where too few letters have boxes or no capital has one.</summary>
    internal static double? Of(Reading reading, MatchedSpan span)
    {
        var (length, steps) = (0.0, 0);
        var capitals = new List<double>();
        foreach (var word in Enumerable.Range(span.FirstLine, span.LastLine - span.FirstLine + 1).SelectMany(line => Words(reading.Lines[line], line, span)))
        {
            length += word[0].InCrop.Centre.DistanceTo(word[^1].InCrop.Centre).Pixels;
            steps += word.Count - 1;
            capitals.AddRange(word.Where(letter => LetterFold.IsUpper(letter.Character)).Select(letter => Height(letter.InCrop)));
        }

        return steps < FewestSteps || capitals.Count == 0 ? null : length / steps / Median.Of(capitals);
    }

    /// <summary>Tells whether words have capitals only, whose letters stand further apart than small ones.</summary>
    internal static bool IsCapitals(IEnumerable<string> letters) => !letters.Any(LetterFold.IsLower);

    /// <summary>Letters of the span, word by word; a stop or comma belongs to no word, and a letter without a box ends one.</summary>
    private static IEnumerable<List<Letter>> Words(LineReading line, int index, MatchedSpan span)
    {
        var word = new List<Letter>();
        for (var at = 0; at < line.Letters.Length; at++)
        {
            var letter = line.Letters[at];
            if (span.Holds(index, at) && letter is { IsSpace: false, InCrop: var box } && box != default && (letter.Character == Letter.Unreadable || !LetterFold.IsPunctuation(letter.Character)))
            {
                word.Add(letter);
            }
            else if (word.Count > 0)
            {
                yield return word;
                word = [];
            }
        }

        if (word.Count > 0)
        {
            yield return word;
        }
    }

    private static double Height(Quad box) => (box.TopLeft.DistanceTo(box.BottomLeft).Pixels + box.TopRight.DistanceTo(box.BottomRight).Pixels) / 2;
}
