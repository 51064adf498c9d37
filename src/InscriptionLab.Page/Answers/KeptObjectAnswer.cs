using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What the catalogue keeps beside the record of an examination.</summary>
/// <param name="Key">Name of the object.</param>
/// <param name="Title">What it is called; null where nobody said.</param>
/// <param name="Seen">What persons saw on the object itself.</param>
/// <param name="Pictures">Pictures of photos read together; none for a single photo.</param>
internal sealed record KeptObjectAnswer(string Key, string? Title, ImmutableArray<KeptSeenAnswer> Seen, ImmutableArray<SetPictureAnswer> Pictures);
