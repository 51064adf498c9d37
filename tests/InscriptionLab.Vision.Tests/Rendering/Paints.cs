using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>Paint for rendered tubes.</summary>
internal static class Paints
{
    /// <summary>Plain metal with seeded scratches and stains all the way round.</summary>
    public static GrayImage Scratched(int width, int height, int seed)
    {
        var random = new Random(seed);
        var pixels = new byte[width * height];
        Array.Fill(pixels, (byte)170);
        for (var i = 0; i < width * height / 4000; i++)
        {
            var x = random.NextDouble() * width;
            var y = random.NextDouble() * height;
            var direction = random.NextDouble() * Math.PI;
            var length = 10 + (random.NextDouble() * 60);
            var level = (byte)random.Next(60, 230);
            for (double t = 0; t < length; t += 0.5)
            {
                for (var thick = 0; thick < 3; thick++)
                {
                    var px = (int)(x + (t * Math.Cos(direction))) + thick;
                    var py = (int)(y + (t * Math.Sin(direction))) % height;
                    if (px >= 0 && px < width && py >= 0)
                    {
                        pixels[(py * width) + px] = level;
                    }
                }
            }
        }

        return new GrayImage(width, height, pixels);
    }
}
