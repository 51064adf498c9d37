using System;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>Compares a size that is written down twice, in inches and in millimetres: catalogues copy slips.</summary>
public static class InchAndMillimetre
{
    /// <summary>Gives a sentence where the two contradict each other by more than both roundings together, or null where they agree.</summary>
    /// <param name="inches">Inches as written.</param>
    /// <param name="inchStep">Half of it is taken for the rounding: 0.1 for one decimal, 0.0625 for sixteenths.</param>
    /// <param name="millimetres">Millimetres as written.</param>
    /// <param name="millimetreStep">Half of it is taken for the rounding.</param>
    public static string? Contradiction(double inches, double inchStep, double millimetres, double millimetreStep)
    {
        var fromInches = Length.FromInches(inches).Millimetres;
        var slack = (Length.FromInches(inchStep).Millimetres + millimetreStep) / 2;
        return Math.Abs(fromInches - millimetres) <= slack
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{inches:0.###} in is {fromInches:0.0} mm, not {millimetres:0.##} mm: they differ by more than rounding, so one of them is a slip; measure again before relying on either.");
    }

    /// <summary>Gives the step of the last digit of a number as written: 0.1 for "1.4", 1 for "40", 0.0625 for "1 5/16".</summary>
    public static double StepOf(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var slash = written.IndexOf('/', StringComparison.Ordinal);
        if (slash >= 0 && double.TryParse(written[(slash + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var parts) && parts > 0)
        {
            return 1 / parts;
        }

        var point = written.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 1 : Math.Pow(10, -(written.Length - point - 1));
    }
}
