using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>
/// A diplomatic transcription after the Leiden conventions (Leiden 1931, published 1932): what is seen and how surely, nothing else.
/// It has no sign for letters supplied, corrected or resolved, because the program never does so.
/// </summary>
/// <param name="Sigla">Which variant of the conventions is used.</param>
/// <param name="Lines">Text of each line: a dot below (U+0323) for an unclear letter, one sign for each letter that cannot be read.</param>
/// <param name="Apparatus">Places that may be read otherwise, in reading order.</param>
public sealed record LeidenTranscription(LeidenSigla Sigla, ImmutableArray<string> Lines, ImmutableArray<LeidenEntry> Apparatus)
{
    /// <summary>The combining dot below of an unclear letter. It is never composed with its letter: most Latin letters have no composed form.</summary>
    public const string DotBelow = "\u0323";

    /// <summary>Gets the sign for one letter that cannot be read.</summary>
    /// <param name="sigla">The variant.</param>
    public static string Illegible(LeidenSigla sigla) => sigla == LeidenSigla.Pluses ? "+" : ".";
}
