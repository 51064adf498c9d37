using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>A piece in short.</summary>
/// <param name="Id">Name in addresses.</param>
/// <param name="Name">What the user calls it.</param>
/// <param name="Version">Grows with every change.</param>
/// <param name="Photos">Names of its photos in addresses.</param>
/// <param name="Levels">Levels of the first photo's tile pyramid; 0 before it is read.</param>
/// <param name="Outcome">What the photos gave together, or else the first photo; null before it is there.</param>
/// <param name="Working">True while something runs.</param>
internal sealed record PieceSummary(string Id, string Name, int Version, ImmutableArray<string> Photos, int Levels, string? Outcome, bool Working);
