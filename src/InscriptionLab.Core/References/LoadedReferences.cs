using System.Collections.Immutable;

namespace InscriptionLab.References;

/// <summary>A reference list as read, with what the reader should tell the user of it.</summary>
/// <param name="List">The list.</param>
/// <param name="Warnings">Sentences on rows that were kept but look like slips; empty where there are none.</param>
public sealed record LoadedReferences(ReferenceList List, ImmutableArray<string> Warnings);
