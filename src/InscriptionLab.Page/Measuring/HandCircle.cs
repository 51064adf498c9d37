using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.Page.Measuring;

/// <summary>
/// A circle whose edge a person placed. In weak perspective the longer axis of a tilted circle's image keeps the circle's diameter, so the
/// diameter is that axis over the scale. The hand is taken to err by a pixel either way at each of the axis' two ends (rectangular, JCGM 100
/// 4.3.7), which is a judgement, and stands in the budget as such.
/// </summary>
internal static class HandCircle
{
    /// <summary>Half width of the interval in which the edge lies that a person placed, in pixels of the photo.</summary>
    private const double Placing = 1;

    private static readonly double PlacedDiameter = Placing / Math.Sqrt(3) * Math.Sqrt(2);

    /// <summary>Gives the circle with its budget, on a scale that the program found.</summary>
    /// <param name="semiMajor">Longer half axis in pixels.</param>
    /// <param name="scale">Scale in the plane of the circle.</param>
    internal static (Measured Diameter, UncertaintyBudget Budget) Of(double semiMajor, ImageScale scale)
    {
        var diameter = 2 * semiMajor / scale.PixelsPerMillimetre;
        return Of(diameter, scale.PixelsPerMillimetre, new BudgetRow("scale at the rim", scale.RelativeUncertainty * diameter, "mm", 1, double.PositiveInfinity, "as found in the photo"));
    }

    /// <summary>Gives the circle with its budget, on a scale that a person laid over the photo.</summary>
    /// <param name="semiMajor">Longer half axis in pixels.</param>
    /// <param name="scalePixels">Pixels between the scale's two ends.</param>
    /// <param name="scaleMillimetres">Millimetres between them.</param>
    internal static (Measured Diameter, UncertaintyBudget Budget) Of(double semiMajor, double scalePixels, double scaleMillimetres)
    {
        var density = scalePixels / scaleMillimetres;
        var diameter = 2 * semiMajor / density;
        return Of(diameter, density, new BudgetRow("ends of the scale", PlacedDiameter, "px", diameter / scalePixels, double.PositiveInfinity, "placed by hand, one pixel either way"));
    }

    private static (Measured Diameter, UncertaintyBudget Budget) Of(double diameter, double density, BudgetRow scale)
    {
        ImmutableArray<BudgetRow> rows = [new BudgetRow("edge of the circle", PlacedDiameter, "px", 1 / density, double.PositiveInfinity, "placed by hand, one pixel either way"), scale];
        var budget = new UncertaintyBudget([.. rows.OrderByDescending(row => row.Contribution)]);
        return (new Measured(Length.FromMillimetres(diameter), Length.FromMillimetres(budget.ExpandedUncertainty), UncertaintyBudget.CoverageFactor), budget);
    }
}
