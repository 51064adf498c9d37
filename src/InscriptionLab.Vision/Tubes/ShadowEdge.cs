using System;
using System.Collections.Generic;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// Tells a cast shadow's edge from a silhouette. Beyond the silhouette a contact shadow is a dark valley: darker than the tube's flank
/// inside and than the cloth outside, or it has the cloth's own colour with less light where the tube's is another. A dark reflection near the limb is inside the tube and darkens gradually instead.
/// </summary>
internal static class ShadowEdge
{
    /// <summary>Lightness of a shadow as a share of the lit background's, at most.</summary>
    private const double DarkerThanOutside = 0.7;

    /// <summary>Lightness of a shadow as a share of the tube's flank, at most.</summary>
    private const double DarkerThanTube = 0.8;

    /// <summary>Lightness of a shadow that has the background's own colour, as a share of the lit background's, at most.</summary>
    private const double SomewhatDarker = 0.85;

    /// <summary>Distance of colour between tube and background from which colour tells them apart, and the share of it by which a shadow may differ from its background.</summary>
    private const double ClearlyApart = 0.06;
    private const double NearlySame = 0.4;

    /// <summary>Rows looked at on the far sides of the two edges.</summary>
    private const double Near = 2;
    private const double Far = 8;

    /// <summary>Share of the band at either edge that is left out, and its largest width in rows.</summary>
    private const double Margin = 0.3;
    private const double LargestMargin = 2.5;

    /// <summary>Strips that must show the valley for it to be judged.</summary>
    private const int FewestStrips = 4;

    /// <summary>Gives a value indicating whether the band between an outer and an inner edge is a shadow on what lies outside.</summary>
    /// <param name="profiles">The profiles.</param>
    /// <param name="outer">The edge farther from the tube's axis.</param>
    /// <param name="inner">The edge nearer to the axis.</param>
    /// <param name="side">-1 above the axis, +1 below it.</param>
    internal static bool Between(TurnedProfiles profiles, EdgeLine outer, EdgeLine inner, int side)
    {
        var toOutside = new List<double>();
        var toTube = new List<double>();
        var offOutside = new List<double>();
        var apart = new List<double>();
        for (var strip = Math.Max(outer.First, inner.First); strip <= Math.Min(outer.Last, inner.Last); strip++)
        {
            var outerRow = outer.At(profiles.Middles[strip]);
            var innerRow = inner.At(profiles.Middles[strip]);
            var margin = Math.Min(LargestMargin, Margin * Math.Abs(outerRow - innerRow));
            var band = Lightness(profiles, strip, innerRow + (side * margin), outerRow - (side * margin));
            var outside = Lightness(profiles, strip, outerRow + (side * Near), outerRow + (side * Far));
            var tube = Lightness(profiles, strip, innerRow - (side * Near), innerRow - (side * Far));
            if (!double.IsNaN(band + outside + tube))
            {
                toOutside.Add((band + 1) / (outside + 1));
                toTube.Add((band + 1) / (tube + 1));
                var b = Chroma(profiles, strip, innerRow + (side * margin), outerRow - (side * margin));
                var o = Chroma(profiles, strip, outerRow + (side * Near), outerRow + (side * Far));
                var t = Chroma(profiles, strip, innerRow - (side * Near), innerRow - (side * Far));
                offOutside.Add(Distance(b, o));
                apart.Add(Distance(t, o));
            }
        }

        return toOutside.Count >= FewestStrips && ((Median.Of(toOutside) < DarkerThanOutside && Median.Of(toTube) < DarkerThanTube)
            || (Median.Of(toOutside) < SomewhatDarker && Median.Of(apart) > ClearlyApart && Median.Of(offOutside) < NearlySame * Median.Of(apart)));
    }

    /// <summary>Colour that does not change with the amount of light: with the light all of L* + 16, a* and b* grow by one factor, the cube root (CIE 1976, above the linear foot).</summary>
    private static (double A, double B) Chroma(TurnedProfiles profiles, int strip, double one, double other)
    {
        double a = 0;
        double b = 0;
        double l = 0;
        for (var row = (int)Math.Max(0, Math.Ceiling(Math.Min(one, other))); row <= Math.Min(profiles.Rows - 1, Math.Max(one, other)); row++)
        {
            var colour = profiles.Colour(strip, row);
            l += colour[0] + 16;
            a += colour[1];
            b += colour[2];
        }

        return l > 0 ? (a / l, b / l) : (0, 0);
    }

    private static double Distance((double A, double B) one, (double A, double B) other) => Math.Sqrt(((one.A - other.A) * (one.A - other.A)) + ((one.B - other.B) * (one.B - other.B)));

    private static double Lightness(TurnedProfiles profiles, int strip, double one, double other)
    {
        double sum = 0;
        var count = 0;
        for (var row = (int)Math.Max(0, Math.Ceiling(Math.Min(one, other))); row <= Math.Min(profiles.Rows - 1, Math.Max(one, other)); row++)
        {
            sum += profiles.Colour(strip, row)[0];
            count++;
        }

        return count == 0 ? double.NaN : sum / count;
    }
}
