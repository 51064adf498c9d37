using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What the page must know before anything else.</summary>
/// <param name="Token">Goes with everything that changes something.</param>
/// <param name="Program">Name and version.</param>
/// <param name="FileBytes">Largest photo file.</param>
/// <param name="References">The reference list.</param>
/// <param name="Catalogue">Name of the catalogue; null where none is open.</param>
/// <param name="Cautions">Sentences that go with every finding.</param>
internal sealed record SessionAnswer(string Token, string Program, long FileBytes, ListAnswer References, string? Catalogue, ImmutableArray<string> Cautions);
