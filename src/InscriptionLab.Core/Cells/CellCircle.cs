using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>One measured circle of a lens cell.</summary>
/// <param name="Role">What the circle is.</param>
/// <param name="Diameter">Diameter with its uncertainty.</param>
/// <param name="Ellipse">The circle's image in the upright photo.</param>
/// <param name="Budget">Where the uncertainty comes from, in millimetres of diameter.</param>
/// <param name="SeenShare">Share of the circle's outline, 0 to 1, along which an edge was seen.</param>
public sealed record CellCircle(CircleRole Role, Measured Diameter, PixelEllipse Ellipse, UncertaintyBudget Budget, double SeenShare)
{
    /// <summary>Gets the edge points in the upright photo from which the circle was fitted, in order round it.</summary>
    public ImmutableArray<PixelPoint> Edge { get; init; } = [];

    /// <summary>Words the result as the GUM (JCGM 100:2008, clause 7.2.3) asks: value, expanded uncertainty, coverage factor and what they mean.</summary>
    public string ToStatement() => GumStatement.Of(Diameter, Budget.EffectiveDegreesOfFreedom);
}
