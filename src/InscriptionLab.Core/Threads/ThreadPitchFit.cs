using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Threads;

/// <summary>Pitch of a thread from light along its flank: the strongest even repetition, then a straight line through the crests (least squares, crests far off it left out).</summary>
/// <param name="PitchMillimetres">Pitch in millimetres.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the line's slope in millimetres, from the crests' scatter.</param>
/// <param name="Crests">Crests that took part.</param>
public sealed record ThreadPitchFit(double PitchMillimetres, double StandardUncertainty, int Crests)
{
    /// <summary>Fewest crests: fewer do not show that the distances are even.</summary>
    public const int FewestCrests = 5;

    /// <summary>Pitches looked for, in millimetres: finer than any telescope's, and coarser (127 to 8 turns an inch).</summary>
    private const double Finest = 0.2;
    private const double Coarsest = 3.2;

    /// <summary>Least share of the light's variance that the repetition must explain.</summary>
    private const double SmallestShare = 0.15;

    /// <summary>A repetition at twice the distance counts as the pitch where it is this strong beside the strongest.</summary>
    private const double DoubleShare = 0.3;

    /// <summary>How far a crest may lie from where it is expected, as a share of the pitch.</summary>
    private const double Reach = 0.3;

    /// <summary>Crests farther off than so many standard deviations are left out.</summary>
    private const double Outlying = 3;

    /// <summary>Scatter below which a crest is not believed, as a share of the sample distance: rounding.</summary>
    private const double Floor = 0.1;

    /// <summary>Fits the pitch.</summary>
    /// <param name="light">Light at even distances along the thread.</param>
    /// <param name="step">Distance of samples in millimetres.</param>
    /// <returns>The fit, or null where no even repetition is seen.</returns>
    public static ThreadPitchFit? Of(IReadOnlyList<double> light, double step)
    {
        ArgumentNullException.ThrowIfNull(light);
        if (!(step > 0) || light.Count * step < FewestCrests * Finest)
        {
            return null;
        }

        var even = Detrended(light);
        var variance = even.Sum(v => v * v);
        if (!(variance > 0) || Strongest(even, step) is not { } frequency || Power(even, step, frequency) < SmallestShare * variance)
        {
            return null;
        }

        var crests = Places(even, step, frequency);
        return crests.Count < FewestCrests ? null : Line(crests, step);
    }

    /// <summary>Takes away a parabola: lamps and tubes shade slowly.</summary>
    private static double[] Detrended(IReadOnlyList<double> light)
    {
        var x = Enumerable.Range(0, light.Count).Select(i => (2.0 * i / Math.Max(1, light.Count - 1)) - 1).ToArray();
        var coefficients = MathNet.Numerics.Fit.Polynomial(x, [.. light], 2);
        return [.. x.Select((v, i) => light[i] - (coefficients[0] + (v * (coefficients[1] + (v * coefficients[2])))))];
    }

    private static double? Strongest(double[] even, double step)
    {
        // Frequencies four times finer than the length resolves, then the top refined by a parabola.
        var length = even.Length * step;
        var fine = 1 / (4 * length);
        var lowest = Math.Max(1 / Coarsest, FewestCrests / length);
        var highest = Math.Min(1 / Finest, 0.5 / (2 * step));
        var count = (int)((highest - lowest) / fine);
        if (count < 3)
        {
            return null;
        }

        var power = Enumerable.Range(0, count).Select(i => Power(even, step, lowest + (i * fine))).ToArray();
        var best = Array.IndexOf(power, power.Max());
        var half = (int)Math.Round((((lowest + (best * fine)) / 2) - lowest) / fine);
        if (half > 1 && half < count - 1)
        {
            var near = Enumerable.Range(half - 1, 3).MaxBy(i => power[i]);
            best = power[near] >= DoubleShare * power[best] ? near : best;
        }

        if (best == 0 || best == count - 1)
        {
            return lowest + (best * fine);
        }

        var (l, m, r) = (power[best - 1], power[best], power[best + 1]);
        var curvature = l - (2 * m) + r;
        return lowest + ((best + (curvature < 0 ? 0.5 * (l - r) / curvature : 0)) * fine);
    }

    private static double Power(double[] even, double step, double frequency)
    {
        var (a, b) = Wave(even, step, frequency);
        return ((a * a) + (b * b)) * 2 / even.Length;
    }

    private static (double Cos, double Sin) Wave(double[] even, double step, double frequency)
    {
        var (a, b) = (0.0, 0.0);
        for (var i = 0; i < even.Length; i++)
        {
            var (s, c) = Math.SinCos(Math.Tau * frequency * i * step);
            (a, b) = (a + (even[i] * c), b + (even[i] * s));
        }

        return (a, b);
    }

    /// <summary>Places each crest by the phase of the repetition in a window one and a half pitches wide, which uses flanks as well as tops.</summary>
    private static List<(int Number, double Place)> Places(double[] even, double step, double frequency)
    {
        var (a, b) = Wave(even, step, frequency);
        var first = Math.Atan2(b, a) / Math.Tau;
        var pitch = 1 / frequency;
        var half = (int)Math.Round(0.75 * pitch / step);
        var found = new List<(int, double)>();
        var length = even.Length * step;
        for (var number = (int)Math.Ceiling(-first); (first + number) * pitch < length; number++)
        {
            var middle = (int)Math.Round((first + number) * pitch / step);
            if (middle - half < 0 || middle + half >= even.Length)
            {
                continue;
            }

            var (cos, sin) = (0.0, 0.0);
            for (var i = -half; i <= half; i++)
            {
                var weight = 1 + Math.Cos(Math.PI * i / (half + 1));
                var (s, c) = Math.SinCos(Math.Tau * frequency * i * step);
                (cos, sin) = (cos + (weight * even[middle + i] * c), sin + (weight * even[middle + i] * s));
            }

            var shift = Math.Atan2(sin, cos) / Math.Tau * pitch;
            if (Math.Abs(shift) < Reach * pitch)
            {
                found.Add((number, (middle * step) + shift));
            }
        }

        return found;
    }

    private static ThreadPitchFit? Line(List<(int Number, double Place)> crests, double step)
    {
        for (var round = 0; ; round++)
        {
            var (mn, mp) = (crests.Average(c => c.Number), crests.Average(c => c.Place));
            var spread = crests.Sum(c => (c.Number - mn) * (c.Number - mn));
            var slope = crests.Sum(c => (c.Number - mn) * (c.Place - mp)) / spread;
            double Off((int Number, double Place) crest) => crest.Place - mp - (slope * (crest.Number - mn));
            var scatter = Math.Max(Floor * step, Math.Sqrt(crests.Sum(c => Off(c) * Off(c)) / (crests.Count - 2)));
            var kept = crests.Where(c => Math.Abs(Off(c)) <= Outlying * scatter).ToList();
            if (kept.Count == crests.Count || kept.Count < FewestCrests || round > 4)
            {
                return new ThreadPitchFit(slope, scatter / Math.Sqrt(spread), crests.Count);
            }

            crests = kept;
        }
    }
}
