using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>One line of lettering.</summary>
/// <param name="Text">The line with its spaces, "?" for letters that cannot be seen.</param>
/// <param name="Letters">The letters without the spaces.</param>
internal sealed record LineRecord(string Text, ImmutableArray<LetterRecord> Letters);
