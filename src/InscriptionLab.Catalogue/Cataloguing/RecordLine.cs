using System.Collections.Immutable;
using System.Text.Json;

namespace InscriptionLab.Cataloguing;

/// <summary>One line of a record.</summary>
/// <param name="Text">The text with its spaces, "?" for letters that cannot be seen.</param>
/// <param name="Letters">The letters, spaces left out.</param>
/// <param name="LettersJson">The letters exactly as the record has them.</param>
public sealed record RecordLine(string Text, ImmutableArray<RecordLetter> Letters, string LettersJson)
{
    /// <summary>Reads letters that were kept apart from their record.</summary>
    /// <exception cref="Outcomes.InscriptionLabException">They are none that this program writes.</exception>
    internal static ImmutableArray<RecordLetter> LettersOf(string json) => RecordContent.Array(json, RecordLetter.From);

    internal static RecordLine From(JsonElement line) => new(
        RecordContent.Text(line, "text"),
        RecordContent.Each(line, "letters", RecordLetter.From),
        RecordContent.Child(line, "letters")?.GetRawText() ?? "[]");
}
