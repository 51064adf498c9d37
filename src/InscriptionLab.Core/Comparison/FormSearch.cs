using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.Comparison;

/// <summary>Finds forms by words that a person types, compared as if they had been read in a photo; "?" stands for a letter that cannot be seen.</summary>
/// <param name="comparer">The list's comparer.</param>
public sealed class FormSearch(Comparer comparer)
{
    /// <summary>Probability given to each letter: what a person types is meant.</summary>
    private const double Meant = 0.999;

    /// <summary>Gives the nearest forms.</summary>
    /// <param name="lines">Lines as they stand on the piece; one line may hold all.</param>
    public ImmutableArray<NearestForm> Find(params ReadOnlySpan<string> lines)
    {
        var reading = new Reading("typed", [.. lines.ToArray().Select(Line)], []);
        return comparer.Compare(reading).Nearest;
    }

    private static LineReading Line(string text)
    {
        ImmutableArray<Letter> letters = [.. Graphemes.Of(References.CanonicalComposition.Compose(text)).Select(letter => new Letter(letter, Probability.From(letter == Letter.Unreadable ? 0 : Meant), [], default, default))];
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(0), Probability.One);
        return new LineReading(line, letters, Probability.From(Meant), null);
    }
}
