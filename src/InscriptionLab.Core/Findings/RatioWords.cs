using System;
using System.Globalization;

namespace InscriptionLab.Findings;

/// <summary>Writes ratios for people: two digits, and never beyond the cap.</summary>
internal static class RatioWords
{
    private const double Dust = 1e-9;

    /// <summary>Writes how many times more probable the better of two explanations is: "2.3", "850", "at least 10,000".</summary>
    internal static string Times(double log10Ratio, double maximum)
    {
        var size = Math.Abs(EvidenceMath.Capped(log10Ratio, maximum));
        return size >= maximum - Dust ? "at least " + Number(Math.Pow(10, maximum)) : Number(Math.Pow(10, size));
    }

    private static string Number(double ratio)
    {
        if (ratio < 10)
        {
            return ratio.ToString("0.0", CultureInfo.InvariantCulture);
        }

        var digits = Math.Pow(10, Math.Floor(Math.Log10(ratio)) - 1);
        return (Math.Round(ratio / digits) * digits).ToString("#,0", CultureInfo.InvariantCulture);
    }
}
