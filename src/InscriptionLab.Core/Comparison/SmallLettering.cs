using System;
using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>
/// Holds back the ratios of small lettering: what a reader says of one letter is believed no further than the letters of that size bear out of which it was measured how often it errs.
/// </summary>
/// <param name="reading">The reading.</param>
/// <param name="options">Bounds.</param>
internal sealed class SmallLettering(Reading reading, ComparerOptions options)
{
    private const int LettersOfASwap = 2;

    /// <summary>Small letters without parts above or below: their boxes are as high as an x.</summary>
    private static readonly FrozenSet<string> AsHighAsAnX = "a c e m n o r s u v w x z".Split(' ').ToFrozenSet(StringComparer.Ordinal);

    private readonly ImmutableArray<bool> _isSmall = [.. reading.Lines.Select(line => Height(line) is { } height && height < options.SmallLetters)];

    internal NearestForm HoldBack(NearestForm form) => form with
    {
        Differences = [.. form.Differences.Select(HoldBack)],
        Agreements = [.. form.Agreements.Select(HoldBack)],
    };

    /// <summary>Gives the height of a line's small letters in the photo, in pixels, or of its capitals where it has fewer than two small ones; null where no letter has a box.</summary>
    internal static double? Height(LineReading line)
    {
        var letters = line.Letters.Select(letter => (letter.Character, Height: (letter.InPhoto.TopLeft.DistanceTo(letter.InPhoto.BottomLeft).Pixels + letter.InPhoto.TopRight.DistanceTo(letter.InPhoto.BottomRight).Pixels) / 2)).Where(letter => letter.Height > 0).ToArray();
        var small = letters.Where(letter => AsHighAsAnX.Contains(letter.Character)).Select(letter => letter.Height).ToArray();
        var heights = small.Length > 1 ? small : [.. letters.Where(letter => LetterFold.IsUpper(letter.Character)).Select(letter => letter.Height)];
        return heights.Length == 0 ? null : Median.Of(heights);
    }

    private LetterDifference HoldBack(LetterDifference place)
    {
        var bound = options.MaximumLog10OfSmallLetter * (place.Kind == DifferenceKind.Swapped ? LettersOfASwap : 1);
        if (!_isSmall[place.LineIndex] || Math.Abs(place.Log10Ratio) <= bound)
        {
            return place;
        }

        var ratio = Math.Clamp(place.Log10Ratio, -bound, bound);
        return place with { Log10Ratio = ratio, Probability = DifferenceFinder.ProbabilityOfDiffering(ratio) };
    }
}
