using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;

namespace InscriptionLab.Assess.Planting;

/// <summary>Spoils photos on purpose, each in one way, in proportion to the lettering, with seeded noise afterwards as a sensor would add it.</summary>
/// <param name="letterHeight">Height of the letters in pixels.</param>
/// <param name="middle">Middle of the lettering.</param>
internal sealed class Planter(double letterHeight, PixelPoint middle)
{
    private const double NoiseLevels = 1.2;

    internal Photo Focus(Photo photo, double share) => Noisy(photo, Soft(photo.Colour, share * letterHeight));

    internal Photo Motion(Photo photo, double share, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var length = Math.Max(3, (int)(share * letterHeight)) | 1;
        var even = new double[length];
        Array.Fill(even, 1.0 / length);
        return Noisy(photo, Along(Values(photo.Colour), photo.Colour.Width, photo.Colour.Height, even, sin, cos));
    }

    internal static Photo Exposed(Photo photo, double gain) => Noisy(photo, Each(photo.Colour, (level, _, _) => level * gain));

    internal Photo Glare(Photo photo, double radius) => Noisy(photo, Each(photo.Colour, (level, x, y) =>
    {
        var away = Math.Sqrt(((x - middle.X) * (x - middle.X)) + ((y - middle.Y) * (y - middle.Y))) / (radius * letterHeight);
        return level + (600 * Math.Exp(-away * away));
    }));

    /// <summary>Leaves a share of what stands out from its surroundings.</summary>
    internal Photo Flat(Photo photo, double share)
    {
        var soft = Soft(photo.Colour, letterHeight);
        var pixels = photo.Colour.Pixels;
        for (var i = 0; i < soft.Length; i++)
        {
            soft[i] += share * (pixels[i] - soft[i]);
        }

        return Noisy(photo, soft);
    }

    internal static Photo Squeezed(Photo photo, int quality) => With(photo, BlockPress.Press(photo.Colour, quality));

    internal static Photo Smaller(Photo photo, double factor)
    {
        var (width, height) = ((int)(photo.Colour.Width * factor), (int)(photo.Colour.Height * factor));
        var pixels = new byte[width * height * 3];
        var from = photo.Colour.Pixels;
        for (var i = 0; i < pixels.Length; i++)
        {
            var (channel, x, y) = (i % 3, i / 3 % width, i / 3 / width);
            var (left, top) = ((int)(x / factor), (int)(y / factor));
            var (end, bottom) = (Math.Max(left + 1, (int)((x + 1) / factor)), Math.Max(top + 1, (int)((y + 1) / factor)));
            var (sum, count) = (0, 0);
            for (var row = top; row < Math.Min(bottom, photo.Colour.Height); row++)
            {
                for (var column = left; column < Math.Min(end, photo.Colour.Width); column++)
                {
                    sum += from[(((row * photo.Colour.Width) + column) * 3) + channel];
                    count++;
                }
            }

            pixels[i] = (byte)(sum / Math.Max(1, count));
        }

        return With(photo, new ColourImage(width, height, pixels));
    }

    /// <summary>Blurs by three running means each way, which come near to a bell curve (Wells, IEEE PAMI 8, 1986, 234-239).</summary>
    private static double[] Soft(ColourImage picture, double sigma)
    {
        const int Passes = 3;
        var width = Math.Max(3, (int)Math.Sqrt((12 * sigma * sigma / Passes) + 1)) | 1;
        var values = Values(picture);
        for (var pass = 0; pass < Passes; pass++)
        {
            values = Means(values, width, picture.Height, 3 * picture.Width, picture.Width, 3);
            values = Means(values, width, picture.Width, 3, picture.Height, 3 * picture.Width);
        }

        return values;
    }

    private static double[] Means(double[] from, int mean, int rows, int rowStep, int length, int step)
    {
        var to = new double[from.Length];
        var reach = mean / 2;
        for (var row = 0; row < rows; row++)
        {
            for (var channel = 0; channel < 3; channel++)
            {
                var start = (row * rowStep) + channel;
                double Value(int i) => from[start + (Math.Clamp(i, 0, length - 1) * step)];
                double sum = 0;
                for (var i = -reach; i <= reach; i++)
                {
                    sum += Value(i);
                }

                for (var i = 0; i < length; i++)
                {
                    to[start + (i * step)] = sum / ((2 * reach) + 1);
                    sum += Value(i + reach + 1) - Value(i - reach);
                }
            }
        }

        return to;
    }

    private static double[] Values(ColourImage picture) => Array.ConvertAll(picture.Pixels.ToArray(), value => (double)value);

    private static double[] Along(double[] from, int width, int height, double[] weights, double sin, double cos)
    {
        var to = new double[from.Length];
        var reach = weights.Length / 2;
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                for (var i = -reach; i <= reach; i++)
                {
                    var (px, py) = (Math.Clamp((int)Math.Round(x + (i * cos)), 0, width - 1), Math.Clamp((int)Math.Round(y + (i * sin)), 0, height - 1));
                    for (var channel = 0; channel < 3; channel++)
                    {
                        to[(((y * width) + x) * 3) + channel] += weights[i + reach] * from[(((py * width) + px) * 3) + channel];
                    }
                }
            }
        }

        return to;
    }

    private static double[] Each(ColourImage picture, Func<double, int, int, double> change)
    {
        var values = new double[picture.Pixels.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = change(picture.Pixels[i], i / 3 % picture.Width, i / 3 / picture.Width);
        }

        return values;
    }

    private static Photo Noisy(Photo photo, double[] values)
    {
        var random = new Random(7);
        var pixels = Array.ConvertAll(values, value =>
            (byte)Math.Clamp(Math.Round(value + (NoiseLevels * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))), 0, 255));
        return With(photo, new ColourImage(photo.Colour.Width, photo.Colour.Height, pixels));
    }

    private static Photo With(Photo photo, ColourImage colour)
    {
        var gray = new byte[colour.Width * colour.Height];
        for (var i = 0; i < gray.Length; i++)
        {
            gray[i] = (byte)Math.Round((0.114 * colour.Pixels[3 * i]) + (0.587 * colour.Pixels[(3 * i) + 1]) + (0.299 * colour.Pixels[(3 * i) + 2]));
        }

        return photo with { Colour = colour, Gray = new GrayImage(colour.Width, colour.Height, gray), Quality = photo.Quality with { JpegQuality = null } };
    }
}
