using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>Engraved rings with invented names, drawn at random but always the same: tilt 0 to 25 degrees, x-heights 14 to 40 pixels, several metals, fills, lamps, blurs, noises and packings.</summary>
internal static class RingCases
{
    internal const string Roman = "libertinus-serif-400-normal.ttf";
    internal const string Sans = "atkinson-hyperlegible-next-400-normal.ttf";
    internal const string Heavy = "atkinson-hyperlegible-next-600-normal.ttf";

    private static readonly (double B, double G, double R)[] Metals = [(0.24, 0.52, 0.72), (0.62, 0.66, 0.68), (0.16, 0.27, 0.34), (0.2, 0.42, 0.66)];

    private static readonly double?[] Fills = [0.1, 0.1, null, 0.05, 0.9, null];

    private static readonly string[] Names =
    [
        "Tolliver & Son Brackhaven", "FENNIMARCH LONDON", "J. Corvane 14 Quay Street", "Marwick Optician", "DAY OR NIGHT", "Hollinshaw Brackhaven No 218",
        "PELLAMY & CO", "Ostrander late Quill", "Improved Achromatic", "W. Dunmore Harbour Lane", "Tollivor & Son", "VERRANDER MAKER",
    ];

    /// <summary>Gives so many rings; every fourth carries two texts, every other one reads with its tops inward.</summary>
    internal static IEnumerable<EngravedRing> Take(int count, int seed)
    {
        var random = new Random(seed);
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        for (var i = 0; i < count; i++)
        {
            var (width, height) = (1300, 1080);
            var radius = Between(330, 480);
            var inner = Between(0.55, 0.72);
            var largest = Math.Min(40, (1 - inner) * radius * 0.36);
            var xHeight = 14 + ((largest - 14) * random.NextDouble());
            var focal = Between(1300, 2400);
            var tilt = Between(0, 25) * Math.PI / 180;
            var tops = i % 2 == 0;
            var font = (i % 3) switch { 0 => Roman, 1 => Sans, _ => i % 2 == 0 ? Heavy : Roman };
            var (spacing, slant) = (Between(0.05, 0.25), i % 6 == 3 ? 0.22 : 0.0);
            RingText Text(string text, double middle, bool outward) => new(text, font, xHeight / radius, middle, outward) { Spacing = spacing, Slant = slant };
            var middle = Between(-Math.PI, Math.PI);
            ImmutableArray<RingText> texts = i % 4 == 3
                ? [Text(Names[i % Names.Length].Split(' ')[0], middle, tops), Text("Brackhaven", middle + Math.PI, i % 8 == 3 ? tops : !tops)]
                : [Text(Names[i % Names.Length], middle, tops)];
            yield return new EngravedRing(
                new RingScene { Tilt = tilt, Turn = Between(-3, 3), Inner = inner, Focal = focal, Distance = focal / radius, CentreX = (width / 2.0) + Between(-40, 40), CentreY = (height / 2.0) + Between(-30, 30) },
                texts)
            {
                Width = width,
                Height = height,
                Seed = (seed * 1000) + i,
                Metal = Metals[random.Next(Metals.Length)],
                Fill = Fills[random.Next(Fills.Length)],
                Lamp = new Vector3D(Math.Cos(i * 2.4), Math.Sin(i * 2.4), -Between(0.35, 0.9)),
                Slope = Between(0.8, 1.3),
                Turning = Between(0.02, 0.12),
                Closed = i % 8 == 6,
                PlateLight = Between(0.02, 0.2),
                TableLight = Between(0.05, 0.4),
                BlurPixels = Between(0.4, 1.2),
                Noise = Between(0.004, 0.02),
                JpegQuality = random.Next(78, 95),
            };
        }
    }
}
