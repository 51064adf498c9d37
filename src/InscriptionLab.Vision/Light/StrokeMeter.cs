using System;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>How far strokes stand out from the metal, and which way they run.</summary>
internal static class StrokeMeter
{
    /// <summary>Blurs between which strokes lie, as shares of the letters' height: the coarse one is twice as wide as a broad stem, so that the tube's own shading does not pass for strokes.</summary>
    private const double Fine = 1 / 16.0;
    private const double Coarse = 0.3;

    /// <summary>Share of the area's pixels beyond the range told, at either end: thin strokes cover little of their line.</summary>
    private const double Beyond = 0.02;

    /// <summary>Least level of the ground by which strokes are divided: below, rounding to whole levels passes for strokes.</summary>
    private const float LeastGround = 8;

    /// <summary>Levels in one of the counted differences over the ground.</summary>
    private const float Counted = 64;

    /// <summary>Patches whose brightness and range tell whether they are washed out: half a letter wide, from this level on, varying by less than this.</summary>
    private const double PatchOfLetter = 0.5;
    private const double Bright = 235;
    private const double Range = 25;

    /// <summary>Gives the range of the strokes' levels over the ground beside them, and root mean square slopes of the strokes along the line over those across it.</summary>
    internal static (double Contrast, double Middle, double Brightest, double? StemsToBars) Measure(LetteringArea area)
    {
        var (relief, grays) = (new LevelCounts(), new LevelCounts());
        var (stems, bars) = (0.0, 0.0);
        foreach (var part in area.Parts)
        {
            using var fine = part.Gray.Blurred(Math.Max(0.8, area.Height * Fine));
            using var coarse = part.Gray.Blurred(area.Height * Coarse);
            var strokes = fine.Mat.AsSpan<float>();
            var ground = coarse.Mat.AsSpan<float>();
            var levels = part.Gray.Mat.AsSpan<float>();
            var inside = part.Inside;
            using var strokesAlone = fine.Apply((from, to) => Cv2.Subtract(from, coarse.Mat, to));
            var slopes = area.Along is null ? null : new SlopeField(strokesAlone);
            for (var at = 0; at < levels.Length; at++)
            {
                if (inside[at] == 0)
                {
                    continue;
                }

                relief.Add(Counted * (strokes[at] - ground[at]) / Math.Max(LeastGround, ground[at]));
                grays.Add(levels[at]);
                if (slopes is not null && area.Along is { } along)
                {
                    var (x, y) = slopes[at];
                    var (onward, down) = ((x * along.X) + (y * along.Y), (y * along.X) - (x * along.Y));
                    (stems, bars) = (stems + (onward * onward), bars + (down * down));
                }
            }
        }

        return ((relief.Quantile(1 - Beyond) - relief.Quantile(Beyond)) / Counted, grays.Quantile(0.5), grays.Quantile(0.99), bars > 0 ? Math.Sqrt(stems / bars) : null);
    }

    /// <summary>Gets the share of the area's patches that are bright and show nothing.</summary>
    internal static double WashedShare(LetteringArea area)
    {
        var side = Math.Max(4, (int)(area.Height * PatchOfLetter));
        var (patches, washed) = (0, 0);
        foreach (var part in area.Parts)
        {
            for (var top = 0; top + side <= part.Height; top += side)
            {
                for (var left = 0; left + side <= part.Width; left += side)
                {
                    var levels = Levels(part, left, top, side);
                    if (levels.Length * 2 < side * side)
                    {
                        continue;
                    }

                    Array.Sort(levels);
                    patches++;
                    washed += At(levels, 0.5) >= Bright && At(levels, 0.95) - At(levels, 0.05) < Range ? 1 : 0;
                }
            }
        }

        return patches == 0 ? 0 : (double)washed / patches;
    }

    private static float At(float[] sorted, double share) => sorted[(int)(share * (sorted.Length - 1))];

    /// <summary>Levels of the pixels of a square that belong to the area.</summary>
    private static float[] Levels(LetteringPart part, int left, int top, int side)
    {
        var levels = part.Gray.Mat.AsSpan<float>();
        var inside = part.Inside;
        var (values, count) = (new float[side * side], 0);
        for (var y = top; y < top + side; y++)
        {
            for (var x = left; x < left + side; x++)
            {
                if (inside[(y * part.Width) + x] != 0)
                {
                    values[count++] = levels[(y * part.Width) + x];
                }
            }
        }

        return values[..count];
    }
}
