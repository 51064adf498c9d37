using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>The years that words and parts tell of.</summary>
/// <param name="Words">The years that hold the coverage, in words.</param>
/// <param name="From">First of them; null where open.</param>
/// <param name="To">Last of them; null where open.</param>
/// <param name="Coverage">Share of the weight within them.</param>
/// <param name="Statements">What tells of years.</param>
/// <param name="Notes">How far they reach, what contradicts, what would narrow them.</param>
/// <param name="First">First year that is considered.</param>
/// <param name="Last">Last year that is considered.</param>
internal sealed record YearsAnswer(string Words, int? From, int? To, double Coverage, ImmutableArray<YearsStatementAnswer> Statements, ImmutableArray<string> Notes, int First, int Last);
