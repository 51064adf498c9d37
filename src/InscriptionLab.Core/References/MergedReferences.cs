using System.Collections.Immutable;

namespace InscriptionLab.References;

/// <summary>A list after rows were put in.</summary>
/// <param name="Forms">All rows.</param>
/// <param name="Changes">Rows added or filled, in order.</param>
/// <param name="Contradictions">Sentences on rows that contradict and were both kept.</param>
/// <param name="Alike">Number of rows that were there already.</param>
public sealed record MergedReferences(ImmutableArray<ReferenceForm> Forms, ImmutableArray<ReferenceChange> Changes, ImmutableArray<string> Contradictions, int Alike);
