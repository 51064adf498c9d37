using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>One measured circle.</summary>
/// <param name="Role">rim, aperture or stop.</param>
/// <param name="Statement">The result with its uncertainty, after the GUM.</param>
/// <param name="Note">The same in other units, and what was seen of it; empty where not known.</param>
/// <param name="Budget">Rows of the uncertainty budget: source, standard uncertainty, share in millimetres, basis; empty where not known.</param>
internal sealed record PaperMeasure(string Role, string Statement, string Note, ImmutableArray<ImmutableArray<string>> Budget);
