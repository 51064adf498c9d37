using System;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Readings;

/// <summary>Writes a reading down after the Leiden conventions, diplomatic layer only.</summary>
/// <param name="options">How doubt is shown.</param>
public sealed class LeidenTranscriber(LeidenOptions options)
{
    /// <summary>Writes a reading down.</summary>
    /// <param name="reading">All lines as read.</param>
    public LeidenTranscription Transcribe(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return new LeidenTranscription(
            options.Sigla,
            [.. reading.Lines.Select(line => Text(line.Letters))],
            [.. reading.Lines.SelectMany((line, index) => Apparatus(line.Letters, index + 1))]);
    }

    /// <summary>Writes one line down.</summary>
    /// <param name="letters">Letters in reading order.</param>
    public string Text(ImmutableArray<Letter> letters) => string.Concat(letters.Select(Sign));

    private string Sign(Letter letter)
    {
        if (letter.Character == Letter.Unreadable)
        {
            return LeidenTranscription.Illegible(options.Sigla);
        }

        return letter.IsSpace || letter.Probability >= options.UnclearBelow ? letter.Character : letter.Character + LeidenTranscription.DotBelow;
    }

    private ImmutableArray<LeidenEntry> Apparatus(ImmutableArray<Letter> letters, int line) =>
    [.. letters
        .Select((letter, index) => new LeidenEntry(line, index + 1, letter.Character, [.. letter.Alternatives.Where(other => other.Probability >= options.ApparatusFrom)]))
        .Where(entry => entry.Alternatives.Length > 0 || entry.Read == Letter.Unreadable)];
}
