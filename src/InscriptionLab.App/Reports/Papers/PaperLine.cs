using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>One line of lettering.</summary>
/// <param name="Leiden">The reading in Leiden form.</param>
/// <param name="Letters">Its letters, spaces counted.</param>
/// <param name="Correction">What a person reads instead, with name and day; null where nobody does.</param>
internal sealed record PaperLine(string Leiden, ImmutableArray<PaperLetter> Letters, string? Correction);
