using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>One thing that limits a photo.</summary>
/// <param name="Kind">pixels, focus, motion, glare, too-dark, too-bright, light-along-strokes, flat-light, angle, cut-by-frame, compression or no-scale.</param>
/// <param name="Sentence">One sentence for the user.</param>
/// <param name="Measure">What was measured.</param>
/// <param name="Value">What it came to.</param>
/// <param name="Limit">Where it begins to limit.</param>
/// <param name="Unit">Unit of both; empty for pure numbers.</param>
/// <param name="Source">How it was measured.</param>
/// <param name="Steps">One to three steps to a better photo.</param>
internal sealed record LimitRecord(string Kind, string Sentence, string Measure, double Value, double Limit, string Unit, string Source, ImmutableArray<string> Steps);
