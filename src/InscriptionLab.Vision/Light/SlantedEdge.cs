using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// How one straight piece of an edge spreads, after ISO 12233 (e-SFR): the edge is fitted through the middles of its slope row by row, the light of all pixels is gathered in quarters of a
/// pixel by distance from it, and the slope of that is the line spread, whose Fourier transform falls to one half at the frequency told. Light is made linear first (IEC 61966-2-1).
/// </summary>
internal sealed class SlantedEdge
{
    /// <summary>Width of the places in which light is gathered, pixels: fourfold oversampling as in ISO 12233.</summary>
    private const double Bin = 0.25;

    /// <summary>Slices along the edge through whose middles it is fitted.</summary>
    private const int Slices = 8;

    /// <summary>Share of the places that must hold pixels: an edge that runs along pixel rows is seen at whole pixels only.</summary>
    private const double LeastFilled = 0.8;

    /// <summary>Shares of the reach on either side that count as beside the edge.</summary>
    private const double Beside = 0.7;

    /// <summary>Least step, as a share of the brighter side's light, and least light of that side: below, noise and packing pass for the edge.</summary>
    private const double LeastStep = 0.25;
    private const double LeastLight = 0.02;

    /// <summary>Largest change of light outside the step, over the step: more is a reflection beside the edge or a limb that fades.</summary>
    private const double MostBeside = 0.35;

    /// <summary>Half the width of the window over the line spread, in rises from 10 to 90 %, and the share of it that is flat: 5.1 and 3.1 standard deviations of a Gaussian, which a window that falls from the middle would narrow.</summary>
    private const double Window = 2;
    private const double FlatPart = 0.6;

    private const double FrequencyStep = 0.0025;
    private const double LargestFrequency = 1;

    private SlantedEdge(double mtf50, double rise) => (Mtf50, Rise) = (mtf50, rise);

    /// <summary>Why a piece of an edge tells nothing.</summary>
    internal enum Fault
    {
        /// <summary>It lies too near to the picture's side.</summary>
        OutOfPicture,

        /// <summary>It runs along pixel rows.</summary>
        Straight,

        /// <summary>Both sides are nearly as bright.</summary>
        Faint,

        /// <summary>The light changes beside it as well.</summary>
        Mirrored,
    }

    /// <summary>Gets the frequency at which half the contrast is left, cycles a pixel.</summary>
    internal double Mtf50 { get; }

    /// <summary>Gets the distance from 10 to 90 % of the step, pixels.</summary>
    internal double Rise { get; }

    /// <summary>Measures one piece.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="middle">Middle of the piece, near the edge.</param>
    /// <param name="along">Unit direction of the edge.</param>
    /// <param name="half">Half the length of the piece, pixels.</param>
    /// <param name="reach">How far is looked to either side, pixels.</param>
    internal static (SlantedEdge? Edge, Fault Fault) Of(GrayImage photo, PixelPoint middle, (double X, double Y) along, double half, double reach)
    {
        var pixels = Pixels(photo, middle, along, half, reach);
        if (pixels is null)
        {
            return (null, Fault.OutOfPicture);
        }

        var (offset, turn) = Line(pixels, half, reach);
        var near = reach - Math.Abs(offset) - (half * Math.Abs(turn));
        if (near < reach / 2)
        {
            return (null, Fault.Mirrored);
        }

        var scale = 1 / Math.Sqrt(1 + (turn * turn));
        return Spread([.. pixels.Select(pixel => ((pixel.Away - offset - (turn * pixel.On)) * scale, pixel.Light))], near);
    }

    private static List<(double On, double Away, double Light)>? Pixels(GrayImage photo, PixelPoint middle, (double X, double Y) along, double half, double reach)
    {
        var (roomX, roomY) = ((half * Math.Abs(along.X)) + (reach * Math.Abs(along.Y)), (half * Math.Abs(along.Y)) + (reach * Math.Abs(along.X)));
        if (middle.X - roomX < 0 || middle.Y - roomY < 0 || middle.X + roomX > photo.Width - 1 || middle.Y + roomY > photo.Height - 1)
        {
            return null;
        }

        var pixels = new List<(double On, double Away, double Light)>();
        for (var y = (int)Math.Ceiling(middle.Y - roomY); y <= middle.Y + roomY; y++)
        {
            for (var x = (int)Math.Ceiling(middle.X - roomX); x <= middle.X + roomX; x++)
            {
                var (dx, dy) = (x - middle.X, y - middle.Y);
                var (on, away) = ((dx * along.X) + (dy * along.Y), (dy * along.X) - (dx * along.Y));
                if (Math.Abs(on) <= half && Math.Abs(away) <= reach)
                {
                    pixels.Add((on, away, SrgbLight.Of(photo[x, y])));
                }
            }
        }

        return pixels;
    }

    /// <summary>The edge's distance at the middle and its turn: a line through the middles of the slope in each slice.</summary>
    private static (double Offset, double Turn) Line(List<(double On, double Away, double Light)> pixels, double half, double reach)
    {
        var whole = Slope(pixels, reach);
        var steepest = Enumerable.Range(0, whole.Length).MaxBy(i => Math.Abs(whole[i]));
        var sign = Math.Sign(whole[steepest]);
        var middles = new List<(double On, double Away)>();
        for (var slice = 0; slice < Slices; slice++)
        {
            var from = (slice * 2 * half / Slices) - half;
            var slope = Slope(pixels.FindAll(pixel => pixel.On >= from && pixel.On < from + (2 * half / Slices)), reach);
            var (sum, weight) = (0.0, 0.0);
            for (var i = Math.Max(0, steepest - (int)(reach / 2)); i < Math.Min(slope.Length, steepest + (int)(reach / 2) + 1); i++)
            {
                var steep = Math.Max(0, sign * slope[i]);
                (sum, weight) = (sum + (steep * steep * (i + 1 - reach)), weight + (steep * steep));
            }

            if (weight > 0)
            {
                middles.Add((from + (half / Slices), sum / weight));
            }
        }

        if (middles.Count < 2)
        {
            return (0, 0);
        }

        var (on, away) = (middles.Average(m => m.On), middles.Average(m => m.Away));
        var turn = middles.Sum(m => (m.On - on) * (m.Away - away)) / middles.Sum(m => (m.On - on) * (m.On - on));
        return (away - (turn * on), turn);
    }

    /// <summary>Differences of the mean light between neighbouring pixel distances, from -reach on; the difference i lies at i + 1 - reach.</summary>
    private static double[] Slope(List<(double On, double Away, double Light)> pixels, double reach)
    {
        var bins = Math.Max(3, (int)(2 * reach));
        var (sums, counts) = (new double[bins], new int[bins]);
        foreach (var (_, away, light) in pixels)
        {
            var bin = Math.Clamp((int)(away + reach), 0, bins - 1);
            sums[bin] += light;
            counts[bin]++;
        }

        var means = sums.Select((sum, i) => counts[i] > 0 ? sum / counts[i] : double.NaN).ToArray();
        return [.. Enumerable.Range(0, bins - 1).Select(i => double.IsFinite(means[i + 1] - means[i]) ? means[i + 1] - means[i] : 0)];
    }

    private static (SlantedEdge? Edge, Fault Fault) Spread(List<(double Away, double Light)> pixels, double near)
    {
        var half = (int)(near / Bin);
        var (sums, counts) = (new double[(2 * half) + 1], new int[(2 * half) + 1]);
        foreach (var (away, light) in pixels)
        {
            var bin = (int)Math.Round(away / Bin) + half;
            if (bin >= 0 && bin < sums.Length)
            {
                sums[bin] += light;
                counts[bin]++;
            }
        }

        if (counts.Count(count => count > 0) < LeastFilled * counts.Length)
        {
            return (null, Fault.Straight);
        }

        var light1 = Filled(sums, counts);
        var outer = Math.Max(1, (int)((1 - Beside) * half));
        var (low, high) = (light1.Take(outer).Average(), light1.Skip(light1.Length - outer).Average());
        var step = high - low;
        if (Math.Max(low, high) < LeastLight || Math.Abs(step) < LeastStep * Math.Max(low, high))
        {
            return (null, Fault.Faint);
        }

        var share = light1.Select(value => (value - low) / step).ToArray();
        var middle = Crossing(share, 0.5, half);
        var (first, last) = (Crossing(share, 0.1, middle), Crossing(share, 0.9, middle));
        var rise = Math.Max(Bin, (last - first) * Bin);
        var reach = Math.Min(half - 2, Math.Max(4 / Bin, Window * rise / Bin));
        return Changes(share, middle, reach) > MostBeside || !(last > first)
            ? (null, Fault.Mirrored)
            : (new SlantedEdge(Half(share, middle, reach), rise), default);
    }

    private static double[] Filled(double[] sums, int[] counts)
    {
        var values = new double[sums.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var (left, right) = (i, i);
            while (left > 0 && counts[left] == 0)
            {
                left--;
            }

            while (right < values.Length - 1 && counts[right] == 0)
            {
                right++;
            }

            var (from, to) = (counts[left] > 0 ? left : right, counts[right] > 0 ? right : left);
            var (a, b) = (sums[from] / counts[from], sums[to] / counts[to]);
            values[i] = to == from ? a : a + ((b - a) * (i - from) / (to - from));
        }

        return values;
    }

    /// <summary>The place nearest to another at which the light passes a share of the step, in bins.</summary>
    private static double Crossing(double[] share, double level, double near)
    {
        var best = double.NaN;
        for (var i = 0; i + 1 < share.Length; i++)
        {
            if (share[i] <= level && share[i + 1] > level)
            {
                var at = i + ((level - share[i]) / (share[i + 1] - share[i]));
                best = double.IsNaN(best) || Math.Abs(at - near) < Math.Abs(best - near) ? at : best;
            }
        }

        return best;
    }

    /// <summary>How far the light goes up and down outside the window, over the step, in means over a pixel.</summary>
    private static double Changes(double[] share, double middle, double reach)
    {
        const int Pixel = (int)(1 / Bin);
        var means = Enumerable.Range(0, share.Length / Pixel).Select(i => (At: (i + 0.5) * Pixel, Level: share.Skip(i * Pixel).Take(Pixel).Average())).ToList();
        double Span(IEnumerable<double> levels) => levels.DefaultIfEmpty().Max() - levels.DefaultIfEmpty().Min();
        return double.IsNaN(middle) ? double.PositiveInfinity
            : Math.Max(Span(means.Where(m => m.At < middle - (reach / 2)).Select(m => m.Level)), Span(means.Where(m => m.At > middle + (reach / 2)).Select(m => m.Level)));
    }

    /// <summary>The frequency at which the modulus of the line spread's transform falls to one half; what gathering and differencing take away is given back.</summary>
    private static double Half(double[] share, double middle, double reach)
    {
        var (from, to) = (Math.Max(1, (int)Math.Ceiling(middle - reach)), Math.Min(share.Length - 2, (int)(middle + reach)));
        var (spread, before) = (new List<(double At, double Value)>(), 1.0);
        for (var i = from; i <= to; i++)
        {
            var outward = Math.Max(0, (Math.Abs(i - middle) / (reach + 1)) - FlatPart) / (1 - FlatPart);
            spread.Add(((i - middle) * Bin, (share[i + 1] - share[i - 1]) / 2 * 0.5 * (1 + Math.Cos(Math.PI * Math.Min(1, outward)))));
        }

        var all = spread.Sum(point => point.Value);
        for (var frequency = FrequencyStep; frequency <= LargestFrequency; frequency += FrequencyStep)
        {
            var (cos, sin) = (spread.Sum(p => p.Value * Math.Cos(Math.Tau * frequency * p.At)), spread.Sum(p => p.Value * Math.Sin(Math.Tau * frequency * p.At)));
            var lost = Sinc(2 * frequency * Bin) * Sinc(frequency * Bin);
            var left = Math.Sqrt((cos * cos) + (sin * sin)) / Math.Abs(all) / lost;
            if (left <= 0.5)
            {
                return frequency - (FrequencyStep * (0.5 - left) / Math.Max(1e-9, before - left));
            }

            before = left;
        }

        return LargestFrequency;
    }

    private static double Sinc(double x) => x == 0 ? 1 : Math.Sin(Math.PI * x) / (Math.PI * x);
}
