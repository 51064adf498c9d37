using System;
using System.Collections.Generic;

namespace InscriptionLab.Vision.Light;

/// <summary>How far strokes stand out from the metal, and which way they run.</summary>
internal static class StrokeMeter
{
    /// <summary>Blurs between which strokes lie, as shares of the letters' height.</summary>
    private const double Fine = 1 / 16.0;
    private const double Coarse = 0.7;

    /// <summary>Patches whose brightness and range tell whether they are washed out: half a letter wide, from this level on, varying by less than this.</summary>
    private const double PatchOfLetter = 0.5;
    private const double Bright = 235;
    private const double Range = 25;

    /// <summary>Gives contrast over the middle level, and root mean square slopes along the line over those across it.</summary>
    internal static (double Contrast, double Middle, double Brightest, double? StemsToBars) Measure(LetteringArea area)
    {
        using var fine = BlurMeter.Blur(area.Gray, Math.Max(0.8, area.Height * Fine));
        using var coarse = BlurMeter.Blur(area.Gray, area.Height * Coarse);
        var strokes = fine.Mat.AsSpan<float>();
        var ground = coarse.Mat.AsSpan<float>();
        var levels = area.Gray.Mat.AsSpan<float>();
        var slopes = area.Along is null ? null : new SlopeField(fine);
        var (relief, grays) = (new List<double>(), new List<double>());
        var (stems, bars) = (0.0, 0.0);
        for (var at = 0; at < levels.Length; at++)
        {
            if (!area.Inside[at])
            {
                continue;
            }

            relief.Add(strokes[at] - ground[at]);
            grays.Add(levels[at]);
            if (slopes is not null && area.Along is { } along)
            {
                var (x, y) = slopes[at];
                var (onward, down) = ((x * along.X) + (y * along.Y), (y * along.X) - (x * along.Y));
                (stems, bars) = (stems + (onward * onward), bars + (down * down));
            }
        }

        var (high, low) = (BlurMeter.Quantile([.. relief], 0.95), BlurMeter.Quantile([.. relief], 0.05));
        var sorted = grays.ToArray();
        var middle = BlurMeter.Quantile(sorted, 0.5);
        return ((high - low) / Math.Max(1, middle), middle, BlurMeter.Quantile(sorted, 0.99), slopes is null || bars <= 0 ? null : Math.Sqrt(stems / bars));
    }

    /// <summary>Gives the share of the area's patches that are bright and show nothing.</summary>
    internal static double WashedShare(LetteringArea area)
    {
        var side = Math.Max(4, (int)(area.Height * PatchOfLetter));
        var (width, height) = (area.Gray.Mat.Width, area.Gray.Mat.Height);
        var levels = area.Gray.Mat.AsSpan<float>();
        var (patches, washed) = (0, 0);
        for (var top = 0; top + side <= height; top += side)
        {
            for (var left = 0; left + side <= width; left += side)
            {
                var values = new List<double>();
                for (var y = top; y < top + side; y++)
                {
                    for (var x = left; x < left + side; x++)
                    {
                        if (area.Inside[(y * width) + x])
                        {
                            values.Add(levels[(y * width) + x]);
                        }
                    }
                }

                if (values.Count * 2 < side * side)
                {
                    continue;
                }

                var sorted = values.ToArray();
                patches++;
                washed += BlurMeter.Quantile(sorted, 0.5) >= Bright && BlurMeter.Quantile(sorted, 0.95) - BlurMeter.Quantile(sorted, 0.05) < Range ? 1 : 0;
            }
        }

        return patches == 0 ? 0 : (double)washed / patches;
    }
}
