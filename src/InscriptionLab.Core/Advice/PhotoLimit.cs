using System.Collections.Immutable;

namespace InscriptionLab.Advice;

/// <summary>One thing that limits a photo.</summary>
/// <param name="Kind">What limits it.</param>
/// <param name="Measure">What was measured, in words.</param>
/// <param name="Value">What it came to.</param>
/// <param name="Limit">Where it begins to limit.</param>
/// <param name="Unit">Unit of both; empty for pure numbers.</param>
/// <param name="Severity">How far beyond the limit, as a ratio from 1 upward.</param>
/// <param name="Source">How it was measured and where the limit comes from.</param>
/// <param name="Sentence">One sentence for the user.</param>
/// <param name="Steps">One to three steps to a better photo, the most useful first.</param>
public sealed record PhotoLimit(
    LimitKind Kind,
    string Measure,
    double Value,
    double Limit,
    string Unit,
    double Severity,
    string Source,
    string Sentence,
    ImmutableArray<string> Steps);
