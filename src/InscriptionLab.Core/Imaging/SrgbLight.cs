using System;

namespace InscriptionLab.Imaging;

/// <summary>
/// Light from coded levels (sRGB, IEC 61966-2-1: below the knee a straight line, above it a power). Blur and averages mix light, not levels. A camera's own
/// tone curve is not known and differs a little.
/// </summary>
public static class SrgbLight
{
    private const double Knee = 0.04045;
    private const double KneeSlope = 12.92;
    private const double Offset = 0.055;
    private const double Power = 2.4;

    private static readonly float[] Light = Decoded();

    /// <summary>Gets the light of each of the 256 levels, 0 to 1.</summary>
    public static ReadOnlySpan<float> OfLevels => Light;

    /// <summary>Gives the light of a level, 0 to 1.</summary>
    public static float Of(byte level) => Light[level];

    private static float[] Decoded()
    {
        var light = new float[byte.MaxValue + 1];
        for (var level = 0; level < light.Length; level++)
        {
            var coded = level / (double)byte.MaxValue;
            light[level] = (float)(coded <= Knee ? coded / KneeSlope : Math.Pow((coded + Offset) / (1 + Offset), Power));
        }

        return light;
    }
}
