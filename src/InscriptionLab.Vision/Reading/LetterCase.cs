using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Lines;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>
/// Tells capitals from small letters by their height where their shape does not: in faces of small capitals, and in letters such as c, o, s, v, w,
/// both cases look alike and only the neighbours say which is cut. A letter read as small that rises as high as its line's capitals and ascenders is
/// a capital: small letters reach 0.46 to 0.86 of them, small capitals 0.61 to 0.90 (90 % of 383 and all of 28 faces of models/training/fonts.tsv, x beside H).
/// </summary>
/// <param name="line">The line.</param>
/// <param name="sight">What the network saw in it.</param>
internal sealed class LetterCase(LetteringLine line, LineSight sight)
{
    /// <summary>Height, in parts of the tall letters' median, at which capital and small letter are equally likely: halfway from the tallest small capitals to the capitals.</summary>
    private const double Even = 0.94;

    /// <summary>Spread of measured heights: this part of the height, and <see cref="PixelSpread"/>.</summary>
    private const double Spread = 0.012;

    /// <summary>Spread of measured heights in crop pixels.</summary>
    private const double PixelSpread = 0.4;

    /// <summary>Capitals and ascenders of one line stand within this ratio of each other (ascenders are 1.0 to 1.15 of capitals); beyond it heights were not measured but guessed.</summary>
    private const double MostUneven = 1.2;

    /// <summary>What one height may say for a capital, in natural log units: no more than if one measured height in twenty is wrong.</summary>
    private const double MostSaid = 2.94;

    /// <summary>A whole line counts as capitals from this many letters on that small letters would leave lower.</summary>
    private const int LeastLow = 3;

    /// <summary>And where this share of them stands as high as the tall ones.</summary>
    private const double MostOfThem = 0.75;

    private const string Low = "acemnorsuvwxz";
    private const string Tall = "bdfhkl";

    /// <summary>Gives the posteriors with the case of each letter weighed by its height; the same where heights say nothing new.</summary>
    internal LinePosteriors Weigh(LinePosteriors posteriors, ImmutableArray<LetterEvidence> letters)
    {
        var ink = Enumerable.Range(0, letters.Length).Where(index => letters[index].Character != " ").ToArray();
        if (!ink.Any(index => IsLow(letters[index])))
        {
            return posteriors;
        }

        var boxes = new LetterBoxes(line, sight);
        var (top, bottom) = LetterBoxes.InkRows(line.Crop.Height);
        var rises = new LetterRows(line.Crop).Rises([.. ink.Select(index => boxes.Named(letters[index]))], top, bottom);
        var heights = ink.Zip(rises).ToDictionary(pair => pair.First, pair => pair.Second);
        var tall = ink.Where(index => IsCapital(letters[index]) || Tall.Contains(letters[index].Character, StringComparison.Ordinal)).Select(index => heights[index]).Order().ToArray();
        if (tall.Length == 0 || tall[tall.Length / 2] <= 0 || tall[^1] > MostUneven * tall[0])
        {
            return posteriors;
        }

        var full = tall[tall.Length / 2];
        double Capital(double rise) => 1 / (1 + Math.Exp((Even - (rise / full)) / (Spread + (PixelSpread / full))));
        var low = ink.Where(index => IsLow(letters[index])).ToArray();
        var high = low.Where(index => Capital(heights[index]) > 0.5).ToArray();
        if (low.Length >= LeastLow && high.Length >= MostOfThem * low.Length)
        {
            // No two heights in the line: all of it is capitals, those that small letters would have left tall as well.
            var sure = low.Select(index => Capital(heights[index])).Order().ElementAt(low.Length / 2);
            return Weighed(posteriors, letters, [.. ink.Select(index => (index, sure))]);
        }

        return Weighed(posteriors, letters, [.. high.Where(index => AmongCapitals(letters, index)).Select(index => (index, Capital(heights[index])))]);
    }

    private static bool IsLow(LetterEvidence letter) => letter.Character.Length == 1 && Low.Contains(letter.Character, StringComparison.Ordinal);

    private static bool IsCapital(LetterEvidence letter) => letter.Character.Length == 1 && char.IsAsciiLetterUpper(letter.Character[0]) && letter.Character != "J";

    /// <summary>Tells whether most other letters of the word are capitals.</summary>
    private static bool AmongCapitals(ImmutableArray<LetterEvidence> letters, int at)
    {
        var (start, end) = (at, at);
        while (start > 0 && letters[start - 1].Character != " ")
        {
            start--;
        }

        while (end + 1 < letters.Length && letters[end + 1].Character != " ")
        {
            end++;
        }

        var others = letters[start..(end + 1)].Length - 1;
        return 2 * letters[start..(end + 1)].Count(IsCapital) > others;
    }

    /// <summary>Shares what each frame of a letter gives to both of its cases anew between them: the network's odds times those of the height.</summary>
    private static LinePosteriors Weighed(LinePosteriors posteriors, ImmutableArray<LetterEvidence> letters, IReadOnlyList<(int Letter, double Capital)> weights)
    {
        if (weights.Count == 0)
        {
            return posteriors;
        }

        var classes = posteriors.Classes;
        var numbers = new float[posteriors.Frames * classes.Length];
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            posteriors.Frame(frame).CopyTo(numbers.AsSpan(frame * classes.Length));
        }

        var pairs = Pairs(classes).ToList();
        foreach (var (letter, capital) in weights.Where(weight => weight.Capital > 0.5))
        {
            var from = letter == 0 ? 0 : (int)Math.Ceiling((letters[letter - 1].CentreFrame + letters[letter].CentreFrame) / 2);
            var to = letter + 1 == letters.Length ? posteriors.Frames - 1 : (int)Math.Floor((letters[letter].CentreFrame + letters[letter + 1].CentreFrame) / 2);
            var said = Math.Min(MostSaid, Math.Log(capital / (1 - capital)));
            foreach (var (small, great) in pairs)
            {
                for (var frame = Math.Max(0, from); frame <= Math.Min(to, posteriors.Frames - 1); frame++)
                {
                    var row = numbers.AsSpan(frame * classes.Length, classes.Length);
                    var both = Math.Log(Math.Exp(row[small]) + Math.Exp(row[great]));
                    var odds = row[great] - row[small] + said;
                    if (double.IsNaN(odds))
                    {
                        continue;
                    }

                    row[great] = (float)(both - Math.Log(1 + Math.Exp(-odds)));
                    row[small] = (float)(both - Math.Log(1 + Math.Exp(odds)));
                }
            }
        }

        return new LinePosteriors(classes, posteriors.Blank, numbers);
    }

    private static IEnumerable<(int Small, int Great)> Pairs(ImmutableArray<string> classes) =>
        LetterPeaks.OtherCase(classes).Select((great, small) => (small, great)).Where(pair => pair.great >= 0 && char.IsLower(classes[pair.small][0]));
}
