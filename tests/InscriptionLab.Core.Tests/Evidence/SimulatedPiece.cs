using System.Collections.Immutable;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>A piece of the simulated world as it is cut.</summary>
/// <param name="Lines">Its lines.</param>
/// <param name="Style">Its lettering.</param>
/// <param name="Year">The year in which it was cut.</param>
internal sealed record SimulatedPiece(ImmutableArray<string> Lines, string Style, int Year);
