using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>The years that lettering and construction tell of.</summary>
/// <param name="From">First year of those that hold the coverage; null where open.</param>
/// <param name="To">Last year; null where open.</param>
/// <param name="Coverage">Share of the weight within them; 0 where nothing tells of years.</param>
/// <param name="Fits">True where some year fits all statements.</param>
/// <param name="Statements">What tells of years.</param>
/// <param name="Conflicts">Pairs that have no year in common.</param>
/// <param name="Next">The observation that would narrow the years most; null where none would.</param>
internal sealed record YearsRecord(
    int? From,
    int? To,
    double Coverage,
    bool Fits,
    ImmutableArray<DateStatementRecord> Statements,
    ImmutableArray<string> Conflicts,
    string? Next);
