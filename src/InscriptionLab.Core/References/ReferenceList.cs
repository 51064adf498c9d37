using System.Collections.Immutable;

namespace InscriptionLab.References;

/// <summary>Attested spellings and known copies against which a reading is compared, after it was read.</summary>
/// <param name="Name">Name or file of the list.</param>
/// <param name="Sha256">SHA-256 of the file's bytes, 64 lower-case hexadecimal digits; empty for a list made in memory.</param>
/// <param name="Forms">Rows in file order.</param>
public sealed record ReferenceList(string Name, string Sha256, ImmutableArray<ReferenceForm> Forms);
