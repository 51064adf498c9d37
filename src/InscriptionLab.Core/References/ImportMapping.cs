using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>
/// How the columns of somebody's table become the fields of a list: a JSON object with "columns" (field to heading), "constants" (field to text
/// for every row) and "words" (field to an object that leads from their word to ours). Years may be longer dates: the first four digits count.
/// </summary>
public sealed record ImportMapping
{
    private static readonly string[] Keys = ["columns", "constants", "words"];

    /// <summary>Gets the heading of each field that is taken from a column.</summary>
    public required FrozenDictionary<string, string> Columns { get; init; }

    /// <summary>Gets the text of each field that is the same in every row.</summary>
    public required FrozenDictionary<string, string> Constants { get; init; }

    /// <summary>Gets, for each field, what their words are called here.</summary>
    public required FrozenDictionary<string, FrozenDictionary<string, string>> Words { get; init; }

    /// <summary>Reads a mapping.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="content">JSON, UTF-8.</param>
    /// <exception cref="InscriptionLabException">It is no mapping.</exception>
    public static ImportMapping Read(string file, ReadOnlySpan<byte> content)
    {
        try
        {
            using var document = JsonDocument.Parse(Utf8Text.Of(file, content), new JsonDocumentOptions { AllowDuplicateProperties = false });
            var root = document.RootElement;
            var mapping = new ImportMapping
            {
                Columns = Texts(root, "columns"),
                Constants = Texts(root, "constants"),
                Words = root.TryGetProperty("words", out var words) ? words.EnumerateObject().ToFrozenDictionary(field => field.Name, field => Texts(words, field.Name), StringComparer.Ordinal) : FrozenDictionary<string, FrozenDictionary<string, string>>.Empty,
            };
            Refuse(file, root.EnumerateObject().Select(property => property.Name).FirstOrDefault(key => !Keys.Contains(key)), Keys);
            Refuse(file, mapping.Columns.Keys.Concat(mapping.Constants.Keys).Concat(mapping.Words.Keys).FirstOrDefault(field => !ReferenceField.All.Contains(field)), ReferenceField.All);
            return mapping;
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            throw new InscriptionLabException($"{file}: this is no mapping; write {{\"columns\": {{\"form\": \"their heading\", \"maker\": \"their heading\"}}, \"constants\": {{\"status\": \"attested\", \"source\": \"where it comes from\"}}, \"words\": {{\"status\": {{\"their word\": \"attested\"}}}}}}.", broken);
        }
    }

    private static void Refuse(string file, string? unknown, IEnumerable<string> known)
    {
        if (unknown is not null)
        {
            throw new InscriptionLabException($"{file}: '{unknown}' is not known; known are {string.Join(", ", known)}.");
        }
    }

    private static FrozenDictionary<string, string> Texts(JsonElement element, string name) => element.TryGetProperty(name, out var texts)
        ? texts.EnumerateObject().ToFrozenDictionary(text => text.Name, text => text.Value.GetString() ?? string.Empty, StringComparer.Ordinal)
        : FrozenDictionary<string, string>.Empty;
}
