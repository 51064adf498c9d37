using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Reading;

/// <summary>
/// Finds between which rows of a line crop each letter stands: first where the line's own rows are (capital top, small-letter top, base
/// line, descenders), all letters together, then for each letter how far it departs from them. What counts is where the picture is busy:
/// a groove, filled or not, has edges, smooth metal has none.
/// </summary>
internal sealed class LetterRows
{
    /// <summary>A row is ink where it is busier than the ground by this share of the way to the busiest rows: about half, as blur spreads an edge evenly to both sides.</summary>
    private const double Threshold = 0.55;

    /// <summary>How strongly a letter is held to its line's rows: the loss, in rows of full ink, of a departure by the whole capital height. Values from 100 to 1500 do about as well.</summary>
    private const double LetterHold = 250;

    /// <summary>How strongly a line's rows are held to those usual in type, likewise.</summary>
    private const double LineHold = 75;

    /// <summary>The hold of a letter whose height is to tell its case, halfway between small letters and capitals: only against neighbouring lines.</summary>
    private const double FreeHold = 20;

    /// <summary>Below this difference between ink and ground nothing is seen and the letter stays where its line puts it: a step of two grey levels, which Sobel's kernel multiplies by up to 4.</summary>
    private const double LeastSpan = 8;

    /// <summary>Share of levels and slopes that are left out at either end as noise when the width of edges is taken.</summary>
    private const double Extreme = 0.01;

    /// <summary>Most rows that blur may be taken to have added at an edge.</summary>
    private const double MostSpread = 3;

    private readonly GrayImage _crop;
    private readonly double[] _busy;
    private readonly double _spread;

    internal LetterRows(GrayImage crop)
    {
        _crop = crop;
        _busy = Busyness(crop);
        _spread = Spread();
    }

    /// <summary>Gives top and bottom of each letter along outer pixel edges.</summary>
    /// <param name="letters">Character and left and right edge of each letter that is not a space.</param>
    /// <param name="inkTop">Where the line's ink is thought to begin.</param>
    /// <param name="inkBottom">Where the line's ink is thought to end.</param>
    internal (double Top, double Bottom)[] Of(IReadOnlyList<(string Character, double Left, double Right)> letters, double inkTop, double inkBottom)
    {
        var zones = letters.Select(letter => LetterZone.Of(letter.Character)).ToArray();
        var profiles = letters.Select(letter => Profile(letter.Left, letter.Right)).ToArray();
        var (rows, capital) = Levels(zones, profiles, inkTop, inkBottom);
        return [.. zones.Select((zone, index) => Tightened(
            Best(rows[zone.Top], capital, LetterHold, row => -profiles[index][row]),
            Best(rows[zone.Bottom], capital, LetterHold, row => profiles[index][row])))];
    }

    /// <summary>
    /// Gives how high each letter rises above the base line, in crop pixels, by what is seen of it alone: neither its own zone nor its line's rows pull at it.
    /// </summary>
    /// <param name="letters">As for <see cref="Of"/>.</param>
    /// <param name="inkTop">As for <see cref="Of"/>.</param>
    /// <param name="inkBottom">As for <see cref="Of"/>.</param>
    internal double[] Rises(IReadOnlyList<(string Character, double Left, double Right)> letters, double inkTop, double inkBottom)
    {
        var zones = letters.Select(letter => LetterZone.Of(letter.Character)).ToArray();
        var profiles = letters.Select(letter => Profile(letter.Left, letter.Right)).ToArray();
        var (rows, capital) = Levels(zones, profiles, inkTop, inkBottom);
        var baseLine = rows.TryGetValue(0, out var found) ? found : inkBottom;
        var between = baseLine - ((1 + LetterZone.SmallTop) / 2 * capital);
        return [.. profiles.Select(profile => baseLine - Best(between, capital, FreeHold, row => -profile[row]))];
    }

    /// <summary>Gives the rows on which the zones of a line begin and end, and the capital height that the ink's extent tells.</summary>
    private (Dictionary<double, double> Rows, double Capital) Levels(LetterZone[] zones, double[][] profiles, double inkTop, double inkBottom)
    {
        // Highest and lowest zone of this line meet the ink; that gives base line and capital height to begin with.
        var (highest, lowest) = (zones.Max(zone => zone.Top), zones.Min(zone => zone.Bottom));
        var capital = (inkBottom - inkTop) / Math.Max(0.3, highest - lowest);
        var baseLine = inkBottom + (lowest * capital);
        var rows = new Dictionary<double, double>();
        foreach (var level in zones.SelectMany(zone => new[] { zone.Top, zone.Bottom }).Distinct())
        {
            var expected = baseLine - (level * capital);
            var tops = profiles.Where((_, index) => zones[index].Top == level).ToArray();
            var bottoms = profiles.Where((_, index) => zones[index].Bottom == level).ToArray();
            rows[level] = Best(expected, capital, LineHold * (tops.Length + bottoms.Length), row => bottoms.Sum(profile => profile[row]) - tops.Sum(profile => profile[row]));
        }

        return (rows, capital);
    }

    /// <summary>Takes off what blur adds to the ink above and below, never more than leaves half the letter.</summary>
    private (double Top, double Bottom) Tightened(double top, double bottom)
    {
        var spread = Math.Min(_spread, (bottom - top) / 4);
        return (top + spread, bottom - spread);
    }

    /// <summary>
    /// Rows by which blur makes a bar of ink busy beyond its edge: half the width of the steepest edges (their height over their slope), which is the one row of Sobel's kernel where they are sharp.
    /// The busiest row of a bar's edge is the edge itself, its blur reaches as far out as in.
    /// </summary>
    private double Spread()
    {
        var levels = new int[_crop.Width * _crop.Height];
        for (var i = 0; i < levels.Length; i++)
        {
            levels[i] = _crop[i % _crop.Width, i / _crop.Width];
        }

        Array.Sort(levels);
        var slopes = _busy.Order().ToArray();
        var height = levels[(int)((1 - Extreme) * (levels.Length - 1))] - levels[(int)(Extreme * (levels.Length - 1))];
        var slope = slopes[(int)((1 - Extreme) * (slopes.Length - 1))] / SobelSum;
        return slope > 0 ? Math.Clamp(height / slope / 2, 0, MostSpread) : 0;
    }

    /// <summary>Sobel's answer to a slope of one level a pixel.</summary>
    private const double SobelSum = 8;

    /// <summary>Gives the outer edge, above row 0 to below the last row, at which gain less departure is greatest.</summary>
    private double Best(double expected, double capital, double hold, Func<int, double> gain)
    {
        var (best, most) = (expected, double.NegativeInfinity);
        for (var row = 0; row <= _crop.Height; row++)
        {
            var departure = (row - 0.5 - expected) / capital;
            var value = gain(row) - (hold * departure * departure);
            if (value > most)
            {
                (best, most) = (row - 0.5, value);
            }
        }

        return best;
    }

    /// <summary>Sums, from the top down to each row edge, how much busier than the threshold the rows of a letter are; 1 for a row of full ink.</summary>
    private double[] Profile(double left, double right)
    {
        var (from, to) = (Math.Clamp((int)Math.Round(left), 0, _crop.Width - 1), Math.Clamp((int)Math.Round(right), 0, _crop.Width - 1));
        var rows = new double[_crop.Height];
        for (var row = 0; row < rows.Length; row++)
        {
            for (var column = from; column <= to; column++)
            {
                rows[row] += _busy[(row * _crop.Width) + column];
            }

            rows[row] /= to - from + 1;
        }

        var sorted = rows.Order().ToArray();
        var (ground, ink) = (sorted[sorted.Length / 10], sorted[sorted.Length * 8 / 10]);
        var span = ink - ground;
        var sums = new double[rows.Length + 1];
        if (span < LeastSpan)
        {
            return sums;
        }

        for (var row = 0; row < rows.Length; row++)
        {
            sums[row + 1] = sums[row] + Math.Clamp((rows[row] - ground) / span, 0, 1.2) - Threshold;
        }

        return sums;
    }

    /// <summary>Steepness of the picture after light smoothing, by central differences.</summary>
    private static double[] Busyness(GrayImage crop)
    {
        var (width, height) = (crop.Width, crop.Height);
        var busy = new double[width * height];
        int At(int x, int y) => crop[Math.Clamp(x, 0, width - 1), Math.Clamp(y, 0, height - 1)];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                // Sobel's kernels: a difference one way, smoothing the other.
                var across = At(x + 1, y - 1) + (2 * At(x + 1, y)) + At(x + 1, y + 1) - At(x - 1, y - 1) - (2 * At(x - 1, y)) - At(x - 1, y + 1);
                var down = At(x - 1, y + 1) + (2 * At(x, y + 1)) + At(x + 1, y + 1) - At(x - 1, y - 1) - (2 * At(x, y - 1)) - At(x + 1, y - 1);
                busy[(y * width) + x] = Math.Sqrt((across * across) + (down * down));
            }
        }

        return busy;
    }
}
