using System;
using System.Linq;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Light;

/// <summary>How far steps at the borders of a JPEG's 8 x 8 blocks stand out from steps elsewhere (after Wang, Bovik and Evans, ICIP 2000). A photo that was shrunk or cut after packing has its borders elsewhere: every place of the grid is tried.</summary>
internal static class BlockMeter
{
    private const int Block = 8;

    /// <summary>Steps that are looked at in each direction, about: means of this many differ by a few parts in a thousand from those of all. Blocks show at the photo's own size alone, so of large photos rows and columns are left out.</summary>
    private const double Enough = 200_000;

    /// <summary>Gives the smaller one, across and down, of the strongest grid line's steps over those of the other lines: evenly spaced strokes make a grid in one direction only.</summary>
    internal static double Measure(GrayImage photo, LetteringArea area) => Math.Min(Along(photo, area, across: true), Along(photo, area, across: false));

    private static double Along(GrayImage photo, LetteringArea area, bool across)
    {
        var (sums, counts) = (new double[Block], new double[Block]);
        var levels = photo.Pixels;
        var skip = Math.Max(1, (int)(area.Parts.Sum(part => (double)part.Frame.Width * part.Frame.Height) / Enough));
        var (step, rowStep) = across ? (1, photo.Width) : (photo.Width, 1);
        foreach (var part in area.Parts)
        {
            var inside = part.Inside;
            var (start, length) = across ? (part.Frame.X, part.Frame.Width) : (part.Frame.Y, part.Frame.Height);
            var (first, rows) = across ? (part.Frame.Y, part.Frame.Height) : (part.Frame.X, part.Frame.Width);
            for (var row = 0; row < rows; row += skip)
            {
                for (var i = 2; i + 2 < length; i++)
                {
                    if (inside[across ? part.IndexOf(i, row) : part.IndexOf(row, i)] == 0)
                    {
                        continue;
                    }

                    var at = ((first + row) * rowStep) + ((start + i) * step);
                    var (before, here, after) = (Math.Abs(levels[at - step] - levels[at - (2 * step)]), Math.Abs(levels[at] - levels[at - step]), Math.Abs(levels[at + step] - levels[at]));
                    sums[(start + i) % Block] += Math.Abs(here - ((before + after) / 2.0));
                    counts[(start + i) % Block]++;
                }
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
