using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>All lines of one photo (or one set of photos) as read.</summary>
/// <param name="Reader">Name and version of the reader that read them.</param>
/// <param name="Lines">Lines in reading order; empty where nothing is cut or nothing can be read.</param>
/// <param name="Style">Probabilities of the lettering styles over all lines, most probable first; empty where unknown.</param>
public sealed record Reading(string Reader, ImmutableArray<LineReading> Lines, ImmutableArray<StyleCandidate> Style);
