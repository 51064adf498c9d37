using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One thing that limits a photo.</summary>
/// <param name="Kind">As in the record of an examination.</param>
/// <param name="Sentence">One sentence.</param>
/// <param name="Figures">What was measured and where it begins to limit; empty where that has no figures.</param>
/// <param name="Source">How it was measured.</param>
/// <param name="Steps">Steps to a better photo.</param>
internal sealed record LimitAnswer(string Kind, string Sentence, string Figures, string Source, ImmutableArray<string> Steps);
