using InscriptionLab.Advice;
using InscriptionLab.App.Records;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>The figures behind a limit, in words.</summary>
internal static class AdviceFigures
{
    internal static string Of(PhotoLimit limit) => Of(Words.For(limit.Kind), limit.Measure, limit.Value, limit.Limit, limit.Unit);

    internal static string Of(LimitRecord limit) => Of(limit.Kind, limit.Measure, limit.Value, limit.Limit, limit.Unit);

    /// <summary>A missing scale and a frame that cuts the lettering have no figure that tells more than their sentence.</summary>
    private static string Of(string kind, string measure, double value, double limit, string unit)
    {
        var behind = unit.Length == 0 ? string.Empty : " " + unit;
        return kind == Words.For(LimitKind.NoScale) || kind == Words.For(LimitKind.CutByFrame)
            ? string.Empty
            : Invariant($"{measure} {value:0.##}{behind}, limit {limit:0.##}{behind}");
    }
}
