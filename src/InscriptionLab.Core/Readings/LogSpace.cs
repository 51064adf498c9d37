using System;

namespace InscriptionLab.Readings;

/// <summary>Sums of probabilities that are kept as natural logarithms, in double precision.</summary>
internal static class LogSpace
{
    /// <summary>Logarithm of the impossible.</summary>
    internal const double Never = double.NegativeInfinity;

    /// <summary>Beyond this distance the smaller term is below half a unit in the last place of the larger: ln(2^53) = 36.7.</summary>
    private const double Negligible = 37;

    /// <summary>Gives ln(e^a + e^b).</summary>
    internal static double Add(double a, double b)
    {
        if (a < b)
        {
            (a, b) = (b, a);
        }

        var gap = a - b;
        return gap < Negligible ? a + Math.Log(1 + Math.Exp(-gap)) : a;
    }

    /// <summary>Gives ln(e^a + e^b + e^c).</summary>
    internal static double Add(double a, double b, double c) => Add(Add(a, b), c);
}
