using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Reading;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class LetterRowsTests
{
    private const int Width = 256;
    private const int Height = 64;

    [Fact]
    public void Each_letter_gets_the_rows_it_stands_in()
    {
        // Strokes 2 px wide: H from row 10 to 49, n from 24 to 49, p from 24 to 60, a raised accent on the last from 12.
        var crop = Drawn((20, 50, 10, 49), (60, 90, 24, 49), (100, 130, 24, 60), (140, 170, 12, 49));
        var rows = new LetterRows(crop).Of([("H", 19.5, 50.5), ("n", 59.5, 90.5), ("p", 99.5, 130.5), ("é", 139.5, 170.5)], 9.5, 60.5);

        Near((9.5, 49.5), rows[0]);
        Near((23.5, 49.5), rows[1]);
        Near((23.5, 60.5), rows[2]);
        Near((11.5, 49.5), rows[3]);
    }

    /// <summary>Blur of a small letter magnified to the crop's height must not make its box taller.</summary>
    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    public void Blur_does_not_make_letters_taller(int times, bool serifs)
    {
        var crop = Drawn(serifs, (20, 50, 10, 49), (60, 90, 24, 49), (100, 130, 24, 60), (140, 170, 12, 49));
        for (var i = 0; i < times; i++)
        {
            crop = Blurred(crop);
        }

        var rows = new LetterRows(crop).Of([("H", 19.5, 50.5), ("n", 59.5, 90.5), ("p", 99.5, 130.5), ("é", 139.5, 170.5)], 9.5, 60.5);

        Near((9.5, 49.5), rows[0], 1.5);
        Near((23.5, 49.5), rows[1], 1.5);
        Near((23.5, 60.5), rows[2], 1.5);
        Near((11.5, 49.5), rows[3], 1.5);
    }

    [Fact]
    public void Where_nothing_is_seen_letters_stand_where_type_puts_them()
    {
        var pixels = new byte[Width * Height];
        Array.Fill(pixels, (byte)120);
        var rows = new LetterRows(new GrayImage(Width, Height, pixels)).Of([("H", 20, 50), ("n", 60, 90)], 9.5, 49.5);

        Near((9.5, 49.5), rows[0], 2);
        Near((49.5 - (40 * LetterZone.SmallTop), 49.5), rows[1], 2);
    }

    [Theory]
    [InlineData("H", 1, 0)]
    [InlineData("n", LetterZone.SmallTop, 0)]
    [InlineData("g", LetterZone.SmallTop, LetterZone.Descent)]
    [InlineData("7", 1, 0)]
    [InlineData("&", 1, 0)]
    public void Zones_follow_common_practice_of_type(string character, double top, double bottom) =>
        Assert.Equal(new LetterZone(top, bottom), LetterZone.Of(character));

    /// <summary>The mean of the 3 by 3 pixels about each.</summary>
    private static GrayImage Blurred(GrayImage crop)
    {
        var pixels = new byte[Width * Height];
        for (var i = 0; i < pixels.Length; i++)
        {
            var sum = 0;
            for (var j = 0; j < 9; j++)
            {
                sum += crop[Math.Clamp((i % Width) + (j % 3) - 1, 0, Width - 1), Math.Clamp((i / Width) + (j / 3) - 1, 0, Height - 1)];
            }

            pixels[i] = (byte)(sum / 9);
        }

        return new GrayImage(Width, Height, pixels);
    }

    private static GrayImage Drawn(params (int Left, int Right, int Top, int Bottom)[] letters) => Drawn(false, letters);

    private static GrayImage Drawn(bool serifs, params (int Left, int Right, int Top, int Bottom)[] letters)
    {
        var pixels = new byte[Width * Height];
        Array.Fill(pixels, (byte)180);
        foreach (var (left, right, top, bottom) in letters)
        {
            for (var y = top; y <= bottom; y++)
            {
                for (var x = left; x <= right; x++)
                {
                    if ((x - left) % 6 < 2 || (serifs && (y < top + 2 || y > bottom - 2)))
                    {
                        pixels[(y * Width) + x] = 40;
                    }
                }
            }
        }

        return new GrayImage(Width, Height, pixels);
    }

    private static void Near((double Top, double Bottom) expected, (double Top, double Bottom) actual, double tolerance = 1) =>
        Assert.True(Math.Abs(expected.Top - actual.Top) <= tolerance && Math.Abs(expected.Bottom - actual.Bottom) <= tolerance, $"{actual} is not {expected}");
}
