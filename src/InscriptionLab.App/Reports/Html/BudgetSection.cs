using System.Linq;
using InscriptionLab.Cells;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>An uncertainty budget as table and chart, with its check by draws.</summary>
internal static class BudgetSection
{
    /// <summary>Draws of the check (JCGM 101:2008): enough for a half-width to about a per cent.</summary>
    private const int Draws = 20_000;
    private const double Coverage = 0.95;
    private const int Seed = 101;

    /// <summary>Gives half the width of the interval that holds 95 % of the draws, in millimetres.</summary>
    internal static double Drawn(UncertaintyBudget budget) => BudgetSimulation.HalfWidth(budget, Coverage, Draws, Seed);

    /// <summary>Writes a budget that opens on a click.</summary>
    internal static void Write(Markup page, string name, UncertaintyBudget budget, double factor)
    {
        var combined = budget.CombinedStandardUncertainty;
        page.Open("details").Element("summary", Invariant($"{name}: standard uncertainty {combined:0.0000} mm"))
            .Open("div", ("class", "scroll")).Open("table", ("class", "diameters"))
            .Open("tr").Element("th", "source").Element("th", "standard uncertainty").Element("th", "in the diameter").Element("th", "share").Element("th", "degrees of freedom").Element("th", "basis").Close("tr");
        foreach (var row in budget.Rows.OrderByDescending(row => row.Contribution))
        {
            var share = combined > 0 ? row.Contribution * row.Contribution / (combined * combined) * 100 : 0;
            page.Open("tr").Element("td", row.Source)
                .Element("td", Invariant($"{row.StandardUncertainty:0.#####} {row.Unit}"))
                .Element("td", Invariant($"{row.Contribution:0.0000} mm"))
                .Open("td").Element("span", Invariant($"{share:0} %"), ("class", "number")).Open("span", ("class", "bar")).Empty("span", ("style", Invariant($"width:{share:0.#}%"))).Close("span").Close("td")
                .Element("td", double.IsFinite(row.DegreesOfFreedom) ? Invariant($"{row.DegreesOfFreedom:0.#}") : "known")
                .Element("td", row.Basis).Close("tr");
        }

        page.Close("table").Close("div")
            .Element("p", Invariant($"The share is that of the squared uncertainty. Check by {Draws} draws of all sources at random (JCGM 101): 95 % lie within \u00B1 {Drawn(budget):0.0000} mm; stated is \u00B1 {factor * combined:0.0000} mm (k = {factor:0.##})."), ("class", "note"))
            .Close("details");
    }
}
