using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>One note of the apparatus: a place that may be read otherwise.</summary>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Letter">Letter in the line, spaces counted, counted from 1.</param>
/// <param name="Read">The letter of the text; "?" where it cannot be read.</param>
/// <param name="Alternatives">What else may stand there, most probable first.</param>
public sealed record LeidenEntry(int Line, int Letter, string Read, ImmutableArray<LetterCandidate> Alternatives);
