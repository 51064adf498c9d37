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
/// a capital; one shaped as a capital that stands lower than those beginning its line's words is a small capital and transcribed as a small letter. Small letters reach 0.46 to 0.86 of them, small capitals 0.61 to 0.90 (90 % of 383 and all of 28 faces of models/training/fonts.tsv, x beside H).
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

    /// <summary>Small capitals reach from the one to the other of these shares of the capitals (as above).</summary>
    private const double LowestSmallCapital = 0.6;
    private const double TallestSmallCapital = 0.9;

    /// <summary>Letters within this share of their median are of one height: twice the spread of heights and the pixel of a letter 20 rows high.</summary>
    private const double OneHeight = 0.06;

    private const string Low = "acemnorsuvwxz";
    private const string Tall = "bdfhkl";

    /// <summary>Gives the posteriors with the case of each letter weighed by its height; the same where heights say nothing new.</summary>
    internal LinePosteriors Weigh(LinePosteriors posteriors, ImmutableArray<LetterEvidence> letters)
    {
        var ink = Enumerable.Range(0, letters.Length).Where(index => letters[index].Character != " ").ToArray();
        if (!ink.Any(index => IsLow(letters[index]) || IsCapital(letters[index])))
        {
            return posteriors;
        }

        var boxes = new LetterBoxes(line, sight);
        var (top, bottom) = LetterBoxes.InkRows(line.Crop.Height);
        var rises = new LetterRows(line.Crop).Rises([.. ink.Select(index => boxes.Named(letters[index]))], top, bottom);
        var heights = ink.Zip(rises).ToDictionary(pair => pair.First, pair => pair.Second);
        if (SmallCapitals(letters, ink, heights) is { Count: > 0 } small)
        {
            return Weighed(posteriors, letters, small);
        }

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
            return sure > 0.5 ? Weighed(posteriors, letters, [.. ink.Select(index => (index, sure))]) : posteriors;
        }

        return Weighed(posteriors, letters, [.. high.Where(index => AmongCapitals(letters, index)).Select(index => (index, Capital(heights[index])))]);
    }

    private static bool IsLow(LetterEvidence letter) => letter.Character.Length == 1 && Low.Contains(letter.Character, StringComparison.Ordinal);

    private static bool IsCapital(LetterEvidence letter) => letter.Character.Length == 1 && char.IsAsciiLetterUpper(letter.Character[0]) && letter.Character != "J";

    /// <summary>
    /// Gives, where a line stands in small capitals, how little each of them is a capital: all letters are shaped as capitals, those at the beginning of words stand taller, and the rest
    /// are of one lower height. Transcribed are small letters, as the cutter's two sizes say. Heights that do not fall into just these two groups say nothing.
    /// </summary>
    private static List<(int Letter, double Capital)> SmallCapitals(ImmutableArray<LetterEvidence> letters, int[] ink, Dictionary<int, double> heights)
    {
        var shaped = ink.Where(index => IsCapital(letters[index]) || IsLow(letters[index])).ToArray();
        if (shaped.Length <= LeastLow)
        {
            return [];
        }

        var highest = shaped.Max(index => heights[index]);
        var low = shaped.Where(index => heights[index] < Even * highest).ToArray();
        if (low.Length < LeastLow || shaped.Except(low).Any(index => index > 0 && letters[index - 1].Character != " "))
        {
            return [];
        }

        var middle = low.Select(index => heights[index]).Order().ElementAt(low.Length / 2);
        return middle < TallestSmallCapital * highest
            && middle > LowestSmallCapital * highest
            && low.Count(index => Math.Abs(heights[index] - middle) <= OneHeight * middle) >= MostOfThem * low.Length
            ? [.. low.Where(index => IsCapital(letters[index])).Select(index => (index, 1 / (1 + Math.Exp(MostSaid))))]
            : [];
    }

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

        foreach (var (letter, capital) in weights)
        {
            var from = letter == 0 ? 0 : (int)Math.Ceiling((letters[letter - 1].CentreFrame + letters[letter].CentreFrame) / 2);
            var to = letter + 1 == letters.Length ? posteriors.Frames - 1 : (int)Math.Floor((letters[letter].CentreFrame + letters[letter + 1].CentreFrame) / 2);
            var said = Math.Clamp(Math.Log(capital / (1 - capital)), -MostSaid, MostSaid);
            foreach (var (small, great) in Pairs(classes))
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
        from small in Enumerable.Range(0, classes.Length)
        let name = classes[small]
        where name.Length == 1 && char.IsLower(name[0]) && char.ToUpperInvariant(name[0]) != name[0]
        let great = classes.IndexOf(name.ToUpperInvariant())
        where great >= 0
        select (small, great);
}
