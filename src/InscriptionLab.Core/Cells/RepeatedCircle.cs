using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>One circle of a cell from several photos of it.</summary>
/// <param name="Role">What the circle is.</param>
/// <param name="Diameter">Mean of the photos with its uncertainty; the coverage factor follows from the effective degrees of freedom.</param>
/// <param name="Budget">Where the uncertainty comes from, in millimetres of diameter.</param>
/// <param name="Readings">Diameter from each photo.</param>
/// <param name="Disagreement">A sentence where the photos differ more than their readings explain; null where they do not.</param>
public sealed record RepeatedCircle(CircleRole Role, Measured Diameter, UncertaintyBudget Budget, ImmutableArray<Length> Readings, string? Disagreement)
{
    /// <summary>Words the result as the GUM asks.</summary>
    public string ToStatement() => GumStatement.Of(Diameter, Budget.EffectiveDegreesOfFreedom);
}
