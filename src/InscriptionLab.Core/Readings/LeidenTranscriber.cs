using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Readings;

/// <summary>
/// Writes a line down after the Leiden conventions (Leiden 1931, published 1932), diplomatic layer only: what is seen and how surely, nothing else.
/// There is no sign for letters supplied, corrected or resolved, because the program never does so.
/// </summary>
/// <param name="options">How doubt is shown.</param>
public sealed class LeidenTranscriber(LeidenOptions options)
{
    /// <summary>The combining dot below of an unclear letter. It is never composed with its letter: most Latin letters have no composed form.</summary>
    public const string DotBelow = "\u0323";

    /// <summary>Writes one line down: a dot below for an unclear letter, one sign for each letter that cannot be read.</summary>
    /// <param name="letters">Letters in reading order.</param>
    public string Text(ImmutableArray<Letter> letters) => string.Concat(letters.Select(Sign));

    private string Sign(Letter letter)
    {
        if (letter.Character == Letter.Unreadable)
        {
            return options.Sigla == LeidenSigla.Pluses ? "+" : ".";
        }

        return letter.IsSpace || letter.Probability >= options.UnclearBelow ? letter.Character : letter.Character + DotBelow;
    }
}
