using System;
using System.Linq;

namespace InscriptionLab.Vision.Light;

/// <summary>How far steps at the borders of a JPEG's 8 x 8 blocks stand out from steps elsewhere (after Wang, Bovik and Evans, ICIP 2000). A photo that was shrunk or cut after packing has its borders elsewhere: every place of the grid is tried.</summary>
internal static class BlockMeter
{
    private const int Block = 8;

    /// <summary>Gives the smaller one, across and down, of the strongest grid line's steps over those of the other lines: evenly spaced strokes make a grid in one direction only.</summary>
    internal static double Measure(LetteringArea area)
    {
        var (width, height) = (area.Gray.Mat.Width, area.Gray.Mat.Height);
        var levels = area.Gray.Mat.AsSpan<float>().ToArray();
        return Math.Min(Along(area.Inside, levels, width, height, 1, width), Along(area.Inside, levels, height, width, width, 1));
    }

    private static double Along(bool[] inside, float[] levels, int length, int rows, int step, int rowStep)
    {
        var (sums, counts) = (new double[Block], new double[Block]);
        for (var row = 0; row < rows; row++)
        {
            for (var i = 2; i + 2 < length; i++)
            {
                var at = (row * rowStep) + (i * step);
                if (!inside[at])
                {
                    continue;
                }

                double Step(int from) => Math.Abs(levels[from] - levels[from - step]);
                sums[i % Block] += Math.Abs(Step(at) - ((Step(at - step) + Step(at + step)) / 2));
                counts[i % Block]++;
            }
        }

        if (counts.Min() < Block)
        {
            return 1;
        }

        var means = sums.Zip(counts, (sum, count) => sum / count).ToList();
        var strongest = means.Max();
        var others = (means.Sum() - strongest) / (Block - 1);
        return others > 0 ? strongest / others : 1;
    }
}
