using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>Circles that a person keeps for the report.</summary>
/// <param name="Person">Who placed them.</param>
/// <param name="Circles">The circles; none to go back to those that the program found.</param>
internal sealed record CirclesRequest(string? Person, ImmutableArray<CircleAsked> Circles);
