using System;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>Words a measured length as the GUM (JCGM 100:2008, clauses 7.2.3 and 7.2.6) asks.</summary>
public static class GumStatement
{
    /// <summary>Digits of an expanded uncertainty worth stating (GUM, clause 7.2.6: at most two).</summary>
    private const int UncertaintyDigits = 2;

    /// <summary>Decimal places never exceeded: a ten-thousandth of a millimetre.</summary>
    private const int MostDecimals = 4;

    /// <summary>Gives the sentence, the uncertainty rounded to two digits and the value to the same place.</summary>
    /// <param name="measured">The length.</param>
    /// <param name="effectiveDegreesOfFreedom">Effective degrees of freedom of its standard uncertainty.</param>
    public static string Of(Measured measured, double effectiveDegreesOfFreedom)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var uncertainty = measured.ExpandedUncertainty.Millimetres;
        var decimals = Decimals(uncertainty);
        var format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        var value = measured.Value.Millimetres.ToString(format, CultureInfo.InvariantCulture);
        var plusMinus = uncertainty.ToString(format, CultureInfo.InvariantCulture);
        var factor = measured.CoverageFactor.ToString("0.##", CultureInfo.InvariantCulture);
        var degrees = double.IsPositiveInfinity(effectiveDegreesOfFreedom) || effectiveDegreesOfFreedom > 1000
            ? "more than 1000"
            : Math.Floor(effectiveDegreesOfFreedom).ToString("F0", CultureInfo.InvariantCulture);
        return $"D = ({value} ± {plusMinus}) mm, where the number following ± is the expanded uncertainty U = k·u_c with k = {factor} "
            + $"({degrees} effective degrees of freedom), a coverage of about 95 % if the assumptions listed with the result hold";
    }

    private static int Decimals(double uncertainty)
    {
        if (!(uncertainty > 0))
        {
            return MostDecimals;
        }

        var leading = (int)Math.Floor(Math.Log10(uncertainty));
        return Math.Clamp(UncertaintyDigits - 1 - leading, 0, MostDecimals);
    }
}
