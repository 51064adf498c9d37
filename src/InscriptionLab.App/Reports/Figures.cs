using System;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Reports;

/// <summary>How numbers are written for people.</summary>
internal static class Figures
{
    /// <summary>From here on a probability is written as more than 99 %: a photo never makes certain.</summary>
    private const double AlmostCertain = 0.995;

    /// <summary>Below this a probability is written as less than 1 %.</summary>
    private const double AlmostImpossible = 0.005;

    internal static string Percent(Probability probability) => probability.Value switch
    {
        >= AlmostCertain => ">99 %",
        < AlmostImpossible => "<1 %",
        var value => Invariant($"{value * 100:0} %"),
    };

    internal static string Point(PixelPoint point) => Invariant($"{point.X:0.0}, {point.Y:0.0}");

    internal static string Seconds(TimeSpan time) => Invariant($"{time.TotalSeconds:0.00} s");

    internal static string Counted(int count, string one, string many) => Invariant($"{count} {(count == 1 ? one : many)}");

    internal static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
