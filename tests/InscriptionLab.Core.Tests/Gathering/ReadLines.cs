using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Gathering;

/// <summary>Lines as a reader might read them, for tests.</summary>
internal static class ReadLines
{
    internal const double Sure = 0.9;

    /// <summary>Gives a line of letters of one probability, 10 pixels wide and 20 high, from a place of the photo to the right.</summary>
    internal static LineReading At(double x, double y, string text, double sure = Sure, IReadOnlyDictionary<int, (string Other, double Probability)>? others = null)
    {
        var crop = new GrayImage(1, 1, new byte[1]);
        var box = Box(x, y, text.Length);
        var letters = text.Select((letter, i) => new Letter(
            letter.ToString(),
            Probability.From(sure),
            others is not null && others.TryGetValue(i, out var other) ? [new LetterCandidate(other.Other, Probability.From(other.Probability))] : [],
            Box(x + (i * Width), y, 1),
            Box(i * Width, 0, 1)));
        return new LineReading(
            new LetteringLine(crop, new Same(), box, box, new LineDirection(default, false, false), PixelLength.FromPixels(Height), Probability.One),
            [.. letters],
            Probability.From(sure),
            null);
    }

    internal static Reading Of(params LineReading[] lines) => new("reader", [.. lines], []);

    private const double Width = 10;
    private const double Height = 20;

    private static Quad Box(double x, double y, int letters) => new(new(x, y), new(x + (letters * Width), y), new(x + (letters * Width), y + Height), new(x, y + Height));

    private sealed class Same : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point) => point;
    }
}
