using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>Renders a scene by casting rays, several a pixel, and adds seeded noise.</summary>
internal static class TubeRenderer
{
    private const int RaysPerSide = 3;

    public static Photo Render(TubeScene scene, Func<double, double, double>? background = null)
    {
        background ??= Cloth;
        var gray = new byte[scene.Width * scene.Height];
        var colour = new byte[gray.Length * ColourImage.Channels];
        var random = new Random(scene.Seed);
        var (centre, right, down, forward) = scene.Camera();
        for (var y = 0; y < scene.Height; y++)
        {
            for (var x = 0; x < scene.Width; x++)
            {
                double tube = 0;
                double rest = 0;
                for (var i = 0; i < RaysPerSide * RaysPerSide; i++)
                {
                    var px = x + (((i % RaysPerSide) + 0.5) / RaysPerSide) - 0.5;
                    var py = y + (((i / RaysPerSide) + 0.5) / RaysPerSide) - 0.5;
                    var ray = (right * (px - scene.PrincipalPoint.X)) + (down * (py - scene.PrincipalPoint.Y)) + (forward * scene.Focal);
                    if (Hit(scene, centre, ray.Normalised()) is { } level)
                    {
                        tube += level;
                    }
                    else
                    {
                        rest += background(px, py);
                    }
                }

                var noise = scene.Noise * Gauss(random);
                var at = (y * scene.Width) + x;
                tube /= RaysPerSide * RaysPerSide;
                rest /= RaysPerSide * RaysPerSide;
                gray[at] = Level(tube + rest + noise);
                colour[3 * at] = Level((0.6 * tube) + (1.1 * rest) + noise);
                colour[(3 * at) + 1] = Level(tube + rest + noise);
                colour[(3 * at) + 2] = Level((1.2 * tube) + (0.9 * rest) + noise);
            }
        }

        return new Photo(
            "rendered.png",
            new string('0', 64),
            new ColourImage(scene.Width, scene.Height, colour),
            new GrayImage(scene.Width, scene.Height, gray),
            new LensFacts(PixelLength.FromPixels(scene.Focal), 1),
            new PhotoQuality(100, 0, 0));
    }

    /// <summary>A woven background: two crossed waves.</summary>
    private static double Cloth(double x, double y) => 70 + (12 * Math.Sin(x * 0.9) * Math.Sin(y * 0.8)) + (6 * Math.Sin((x + (2 * y)) * 0.05));

    private static double? Hit(TubeScene scene, Vector3D centre, Vector3D ray)
    {
        var a = (ray.Y * ray.Y) + (ray.Z * ray.Z);
        var b = (centre.Y * ray.Y) + (centre.Z * ray.Z);
        var c = (centre.Y * centre.Y) + (centre.Z * centre.Z) - (scene.Radius * scene.Radius);
        var discriminant = (b * b) - (a * c);
        if (discriminant < 0)
        {
            return null;
        }

        var point = centre + (ray * ((-b - Math.Sqrt(discriminant)) / a));
        if (point.X < scene.Start || point.X > scene.End)
        {
            return null;
        }

        var around = Math.Atan2(-point.Y, point.Z);
        var shade = scene.Shaded ? 0.45 + (0.4 * Math.Max(0, Math.Cos(around + 0.5))) + (0.5 * Math.Exp(-Math.Pow((around - 0.35) / 0.12, 2))) : 1;
        return shade * Paint(scene, point.X - scene.Target - scene.Push, Math.IEEERemainder(around - scene.Turn, 2 * Math.PI) * scene.Radius);
    }

    private static double Paint(TubeScene scene, double axial, double arc)
    {
        if (scene.Paint is not { } paint)
        {
            return 170;
        }

        var x = (axial * scene.PaintPixelsPerMillimetre) + ((paint.Width - 1) / 2.0);
        var y = (arc * scene.PaintPixelsPerMillimetre) + ((paint.Height - 1) / 2.0);
        var left = (int)Math.Floor(x);
        var top = (int)Math.Floor(y);
        if (left < 0 || top < 0 || left + 1 >= paint.Width || top + 1 >= paint.Height)
        {
            return paint[0, 0];
        }

        var (u, v) = (x - left, y - top);
        return ((1 - v) * (((1 - u) * paint[left, top]) + (u * paint[left + 1, top])))
            + (v * (((1 - u) * paint[left, top + 1]) + (u * paint[left + 1, top + 1])));
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static byte Level(double value) => (byte)Math.Clamp(Math.Round(value), 0, 255);
}
