using System;
using InscriptionLab.Imaging;
using InscriptionLab.Reliefs;

namespace InscriptionLab.Vision.Relief;

/// <summary>Pictures of a surface's form, each the size of the strip.</summary>
public static class ReliefPictures
{
    /// <summary>Shares of the pixels that may be pure black and pure white.</summary>
    private const double Darkest = 0.002;
    private const double Brightest = 0.998;

    /// <summary>The lamp of the lit picture: from the upper left, as readers of maps are used to (common practice), 40 degrees high.</summary>
    private const float LampX = -0.542f;
    private const float LampY = -0.542f;
    private const float LampZ = 0.643f;

    /// <summary>Gives heights as grey: grooves dark, bare metal light.</summary>
    public static GrayImage Grooves(SurfaceRelief relief)
    {
        ArgumentNullException.ThrowIfNull(relief);
        var heights = relief.Height.Values;
        var sorted = heights.ToArray();
        Array.Sort(sorted);
        var (low, high) = (sorted[(int)(Darkest * (sorted.Length - 1))], sorted[(int)(Brightest * (sorted.Length - 1))]);
        var pixels = new byte[heights.Length];
        for (var i = 0; i < pixels.Length; i++)
        {
            pixels[i] = Level((heights[i] - low) / Math.Max(1e-6f, high - low));
        }

        return new GrayImage(relief.Height.Width, relief.Height.Height, pixels);
    }

    /// <summary>Gives the form alone, without stains, as matt metal lit from the upper left.</summary>
    public static GrayImage Lit(SurfaceRelief relief)
    {
        ArgumentNullException.ThrowIfNull(relief);
        var pixels = new byte[relief.Height.Values.Length];
        for (var i = 0; i < pixels.Length; i++)
        {
            var (x, y, z) = NormalAt(relief, i);
            pixels[i] = Level(0.8f * Math.Max(0, (x * LampX) + (y * LampY) + (z * LampZ)));
        }

        return new GrayImage(relief.Height.Width, relief.Height.Height, pixels);
    }

    /// <summary>Gives normals as colours: red grows to the right, green upward, blue toward the viewer; bare metal is light blue (common practice of normal maps).</summary>
    public static ColourImage Normals(SurfaceRelief relief)
    {
        ArgumentNullException.ThrowIfNull(relief);
        return Packed(relief, (x, y, z, _) => (Level((1 + x) / 2), Level((1 - y) / 2), Level((1 + z) / 2)));
    }

    /// <summary>Gives all that a lamp can be moved over: red and green as in <see cref="Normals"/>, blue is half the albedo.</summary>
    public static ColourImage ForRelighting(SurfaceRelief relief)
    {
        ArgumentNullException.ThrowIfNull(relief);
        return Packed(relief, (x, y, _, albedo) => (Level((1 + x) / 2), Level((1 - y) / 2), Level(albedo / 2)));
    }

    private static ColourImage Packed(SurfaceRelief relief, Func<float, float, float, float, (byte Red, byte Green, byte Blue)> colour)
    {
        var pixels = new byte[relief.Height.Values.Length * ColourImage.Channels];
        for (var i = 0; i < relief.Height.Values.Length; i++)
        {
            var (x, y, z) = NormalAt(relief, i);
            (pixels[(3 * i) + 2], pixels[(3 * i) + 1], pixels[3 * i]) = colour(x, y, z, relief.Albedo.Values[i]);
        }

        return new ColourImage(relief.Height.Width, relief.Height.Height, pixels);
    }

    private static (float X, float Y, float Z) NormalAt(SurfaceRelief relief, int at)
    {
        var (x, y) = (relief.NormalX.Values[at], relief.NormalY.Values[at]);
        return (x, y, MathF.Sqrt(Math.Max(0, 1 - (x * x) - (y * y))));
    }

    private static byte Level(float share) => (byte)Math.Clamp(MathF.Round(share * 255), 0, 255);
}
