using InscriptionLab.Advice;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>The figures behind a limit, in words.</summary>
internal static class AdviceFigures
{
    internal static string Of(PhotoLimit limit)
    {
        var unit = limit.Unit.Length == 0 ? string.Empty : " " + limit.Unit;
        return limit.Kind switch
        {
            LimitKind.NoScale or LimitKind.CutByFrame => string.Empty,
            _ => Invariant($"{limit.Measure} {limit.Value:0.##}{unit}, limit {limit.Limit:0.##}{unit}"),
        };
    }
}
