using System.Collections.Immutable;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.Sizes;

/// <summary>Sizes of a tube in millimetres, from a scale beside it.</summary>
/// <param name="Scale">Kind of scale that was used.</param>
/// <param name="Diameter">Diameter at the middle of the visible length, with its uncertainty.</param>
/// <param name="Budget">Where that uncertainty comes from, in millimetres of diameter.</param>
/// <param name="Lines">Sizes of the lines of lettering that lie on the tube.</param>
/// <param name="Notes">Sentences for the user: what was assumed.</param>
public sealed record TubeSizes(ScaleKind Scale, Measured Diameter, UncertaintyBudget Budget, ImmutableArray<LineSizes> Lines, ImmutableArray<string> Notes);
