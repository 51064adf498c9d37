using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Reading;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class LetterCaseTests
{
    private const int Tall = 40;
    private const int Base = 52;
    private const int Pitch = 40;
    private const int Stroke = 28;

    private static readonly ImmutableArray<string> Classes = ["", "L", "O", "o", "D", "d", "N", "n"];
    private static readonly LetterDecoder Decoder = new(new EngravedReaderOptions());

    [Theory]
    [InlineData(Tall, "LOND")]
    [InlineData(28, "LoND")]
    public void A_letter_of_one_shape_in_both_cases_is_told_by_its_height(int height, string text) =>
        Assert.Equal(text, Decode(("L", 0.98, Tall), ("o", 0.7, height), ("N", 0.98, Tall), ("D", 0.98, Tall)).Text);

    [Fact]
    public void Height_weighs_no_more_than_one_wrong_height_in_twenty_allows()
    {
        // Odds of 999 to 1 by shape stand against 19 to 1 by height; odds of 7 to 3 do not.
        var reading = Decode(("L", 0.98, Tall), ("n", 0.999, Tall), ("O", 0.98, Tall), ("D", 0.98, Tall));

        Assert.Equal("LnOD", reading.Text);
        Assert.InRange(reading.Letters[1].Probability.Value, 0.95, 0.99);
    }

    [Fact]
    public void A_line_of_tall_letters_alone_is_of_capitals()
    {
        Assert.Equal("DONON", Decode(("d", 0.7, Tall), ("o", 0.7, Tall), ("n", 0.7, Tall), ("o", 0.7, Tall), ("n", 0.7, Tall)).Text);
        Assert.Equal("donon", Decode(("d", 0.7, Tall), ("o", 0.7, 26), ("n", 0.7, 26), ("o", 0.7, 26), ("n", 0.7, 26)).Text);
    }

    [Fact]
    public void Where_tall_letters_disagree_heights_say_nothing() =>
        Assert.Equal("LoND", Decode(("L", 0.98, 40), ("o", 0.7, 40), ("N", 0.98, 28), ("D", 0.98, 40)).Text);

    /// <summary>Reads a line of comb-like letters of these heights; the other case of a letter gets the rest of its probability.</summary>
    private static LineReading Decode(params (string Character, double Probability, int Height)[] letters)
    {
        var width = (letters.Length * Pitch) + Pitch;
        var pixels = new byte[width * EngravedNetwork.Height];
        Array.Fill(pixels, (byte)180);
        var frames = new List<float>();
        for (var frame = 0; frame < width / EngravedNetwork.FrameWidth; frame++)
        {
            frames.AddRange(Classes.Select((_, index) => index == 0 ? 0f : -20f));
        }

        for (var i = 0; i < letters.Length; i++)
        {
            var (character, probability, height) = letters[i];
            for (var y = Base - height; y < Base; y++)
            {
                for (var x = 0; x < Stroke; x++)
                {
                    pixels[(y * width) + (i * Pitch) + Pitch - (Stroke / 2) + x] = x % 6 < 2 || y < Base - height + 2 || y >= Base - 2 ? (byte)40 : (byte)180;
                }
            }

            var row = ((i + 1) * Pitch / EngravedNetwork.FrameWidth) * Classes.Length;
            var other = char.IsUpper(character[0]) ? character.ToLowerInvariant() : character.ToUpperInvariant();
            frames[row] = -20f;
            frames[row + Classes.IndexOf(character)] = (float)Math.Log(probability);
            if (Classes.IndexOf(other) is var rival and >= 0)
            {
                frames[row + rival] = (float)Math.Log(1 - probability);
            }
        }

        var crop = new GrayImage(width, EngravedNetwork.Height, pixels);
        var line = new LetteringLine(crop, new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(Tall), Probability.One);
        var edges = Enumerable.Repeat((Stroke / 2f, Stroke / 2f), frames.Count / Classes.Length);
        return Decoder.Decode(line, new LineSight(new LinePosteriors(Classes, 0, [.. frames]), [1, 0, 0, 0], [1], 1, [.. edges]));
    }
}
