using System;

namespace InscriptionLab.Surveys;

/// <summary>The score interval of a proportion (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927, 209–212).</summary>
/// <param name="Low">Lower end, 0 to 1.</param>
/// <param name="High">Upper end, 0 to 1.</param>
public readonly record struct WilsonInterval(double Low, double High)
{
    /// <summary>97.5 % point of the normal distribution.</summary>
    private const double Z = 1.959963984540054;

    /// <summary>Gives the 95 % interval of <paramref name="count"/> in <paramref name="of"/>; 0 to 1 where nothing was counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is not between 0 and <paramref name="of"/>.</exception>
    public static WilsonInterval Of(int count, int of)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, of);
        if (of == 0)
        {
            return new WilsonInterval(0, 1);
        }

        var share = (double)count / of;
        var spread = Z * Z / of;
        var middle = share + (spread / 2);
        var half = Z * Math.Sqrt(((share * (1 - share)) + (spread / 4)) / of);
        return new WilsonInterval(count == 0 ? 0 : (middle - half) / (1 + spread), count == of ? 1 : (middle + half) / (1 + spread));
    }
}
