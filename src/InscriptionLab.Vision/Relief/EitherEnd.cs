using System;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Relief;

/// <summary>Which of two lamps stood toward which end of a tube, where their photos differ in grooves at all: engraving is cut in, not raised, so the heights that the photos' difference adds up to must reach farther down than up.</summary>
internal static class EitherEnd
{
    private const double Reach = 30 * Math.PI / 180;

    private const double Calm = 1.5;

    /// <summary>Kurtosis of the photos' difference from which grooves show in it: noise alone has 3, thin strokes on bare metal far more. Stains drop out of the difference.</summary>
    private const double Strokes = 5;

    /// <summary>Gives 1 for the lamp to the right, -1 for the one to the left; zeros where the lamps are not opposite.</summary>
    internal static double[] Signs(FlatLight first, FlatLight second, CylinderStripMap map, Angle focus, double longestWave)
    {
        var rows = Enumerable.Range(0, first.Height).Where(row => Math.Abs(map.ToSurface(new PixelPoint(0, row)).Around.Radians - focus.Radians) <= Reach).ToList();
        if (rows.Count < 8)
        {
            return [0, 0];
        }

        var (width, top) = (first.Width, rows[0]);
        float[] Shown(FlatLight photo) => FlatLight.Blurred([.. photo.Over.Skip(top * width).Take(rows.Count * width).Select(over => over < 0 ? 0 : Math.Clamp(over - 1, -1, 1))], width, rows.Count, Calm, Calm);
        var (one, other) = (Shown(first), Shown(second));

        // Lit from the right, a slope that rises to the right is dark.
        var slopes = new FloatImage(width, rows.Count, [.. one.Zip(other, (a, b) => b - a)]);
        if (Kurtosis(slopes.Values) < Strokes)
        {
            return [0, 0];
        }

        var heights = SlopeIntegrator.Integrate(slopes, 1, 0, longestWave).Values.ToArray();
        var skew = heights.Sum(height => Math.Pow(height, 3));
        return skew < 0 ? [1, -1] : [-1, 1];
    }

    private static double Kurtosis(ReadOnlySpan<float> values)
    {
        var (squares, fourths) = (0.0, 0.0);
        foreach (var value in values)
        {
            var square = (double)value * value;
            (squares, fourths) = (squares + square, fourths + (square * square));
        }

        return squares > 0 ? fourths * values.Length / (squares * squares) : 0;
    }
}
