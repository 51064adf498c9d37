using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>Refuses lengths and numbers that no optical part has.</summary>
internal static class Positive
{
    internal static void Check(Length length, string name)
    {
        if (!(length.Millimetres > 0))
        {
            throw new ArgumentOutOfRangeException(name, length, "The length must be above zero.");
        }
    }

    internal static void Check(double number, string name)
    {
        if (!(number > 0) || !double.IsFinite(number))
        {
            throw new ArgumentOutOfRangeException(name, number, "The number must be above zero.");
        }
    }
}
