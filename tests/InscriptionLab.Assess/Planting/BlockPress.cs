using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Assess.Planting;

/// <summary>Does to a picture what packing it as a JPEG does to brightness: cosine transform of 8 x 8 blocks, rounding by the table of ITU-T T.81 Annex K.1 scaled as the Independent JPEG Group does, and back.</summary>
internal static class BlockPress
{
    private const int Side = 8;

    private static readonly int[] Table =
    [
        16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22, 29, 51, 87, 80, 62,
        18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103, 121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99,
    ];

    private static readonly double[] Cosines = MakeCosines();

    internal static ColourImage Press(ColourImage picture, int quality)
    {
        var scale = quality < 50 ? 5000.0 / quality : 200 - (2.0 * quality);
        var steps = Array.ConvertAll(Table, entry => Math.Clamp(Math.Floor(((entry * scale) + 50) / 100), 1, 255));
        var pixels = picture.Pixels.ToArray();
        for (var top = 0; top + Side <= picture.Height; top += Side)
        {
            for (var left = 0; left + Side <= picture.Width; left += Side)
            {
                Block(pixels, picture.Width, left, top, steps);
            }
        }

        return new ColourImage(picture.Width, picture.Height, pixels);
    }

    private static void Block(byte[] pixels, int width, int left, int top, double[] steps)
    {
        var before = new double[Side * Side];
        for (var i = 0; i < before.Length; i++)
        {
            var at = (((top + (i / Side)) * width) + left + (i % Side)) * 3;
            before[i] = (0.114 * pixels[at]) + (0.587 * pixels[at + 1]) + (0.299 * pixels[at + 2]) - 128;
        }

        var spectrum = Turn(before, forward: true);
        for (var i = 0; i < spectrum.Length; i++)
        {
            spectrum[i] = Math.Round(spectrum[i] / steps[i]) * steps[i];
        }

        var after = Turn(spectrum, forward: false);
        for (var i = 0; i < after.Length; i++)
        {
            var at = (((top + (i / Side)) * width) + left + (i % Side)) * 3;
            for (var channel = 0; channel < 3; channel++)
            {
                pixels[at + channel] = (byte)Math.Clamp(Math.Round(pixels[at + channel] + after[i] - before[i]), 0, 255);
            }
        }
    }

    private static double[] Turn(double[] block, bool forward)
    {
        var rows = new double[block.Length];
        var both = new double[block.Length];
        double Cosine(int from, int to) => forward ? Cosines[(to * Side) + from] : Cosines[(from * Side) + to];
        for (var y = 0; y < Side; y++)
        {
            for (var u = 0; u < Side; u++)
            {
                for (var x = 0; x < Side; x++)
                {
                    rows[(y * Side) + u] += block[(y * Side) + x] * Cosine(x, u);
                }
            }
        }

        for (var u = 0; u < Side; u++)
        {
            for (var v = 0; v < Side; v++)
            {
                for (var y = 0; y < Side; y++)
                {
                    both[(v * Side) + u] += rows[(y * Side) + u] * Cosine(y, v);
                }
            }
        }

        return both;
    }

    /// <summary>The orthonormal cosine transform: row is frequency, column is place.</summary>
    private static double[] MakeCosines()
    {
        var cosines = new double[Side * Side];
        for (var i = 0; i < cosines.Length; i++)
        {
            var (frequency, place) = (i / Side, i % Side);
            cosines[i] = (frequency == 0 ? Math.Sqrt(1.0 / Side) : Math.Sqrt(2.0 / Side)) * Math.Cos(((2 * place) + 1) * frequency * Math.PI / (2 * Side));
        }

        return cosines;
    }
}
