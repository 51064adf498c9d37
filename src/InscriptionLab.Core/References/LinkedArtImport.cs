using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>
/// Reads rows of a list from Linked Art 1.0 JSON: of a HumanMadeObject the inscription (carries, or a statement classified as
/// aat:300028705), who produced it and when; of a Group or Person its names, residence and years. One record, an array, or an object with "items" or "orderedItems".
/// </summary>
/// <param name="status">Status given to the rows: a record of an object does not say whose hand cut the mark.</param>
/// <param name="options">Bounds; null for the defaults.</param>
public sealed class LinkedArtImport(string status, ReferenceListReaderOptions? options = null)
{
    private const string Inscription = "300028705";
    private const int DigitsOfYear = 4;

    private readonly ReferenceListReaderOptions _options = options ?? new ReferenceListReaderOptions();

    /// <summary>Reads.</summary>
    /// <param name="file">Name of the file, for messages and as the source where a record has no address.</param>
    /// <param name="content">JSON, UTF-8.</param>
    /// <exception cref="InscriptionLabException">It is no such JSON, or its rows are wrong.</exception>
    public ImmutableArray<ReferenceForm> Read(string file, ReadOnlySpan<byte> content)
    {
        var faults = new ReferenceFaults(file, "field");
        try
        {
            using var document = JsonDocument.Parse(Utf8Text.Of(file, content));
            ReferenceRow[] rows = [.. Records(document.RootElement).SelectMany((record, index) => Rows(record, string.Create(CultureInfo.InvariantCulture, $"record {index + 1}"), file))];
            if (rows.Length == 0)
            {
                throw faults.Unreadable("it holds no inscription with a maker and no name of a Group or Person in Linked Art; nothing was taken.");
            }

            var forms = new ReferenceFormParser(_options, faults).Parse(rows);
            faults.ThrowIfAny(_options.MaximumErrors);
            return forms;
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            throw new InscriptionLabException($"{file}: is not Linked Art JSON; give the record, or a list of records, in JSON as the museum publishes it.", broken);
        }
    }

    private static IEnumerable<JsonElement> Records(JsonElement root) => root.ValueKind switch
    {
        JsonValueKind.Array => root.EnumerateArray(),
        JsonValueKind.Object when root.TryGetProperty("items", out var items) => items.EnumerateArray(),
        JsonValueKind.Object when root.TryGetProperty("orderedItems", out var items) => items.EnumerateArray(),
        _ => [root],
    };

    private IEnumerable<ReferenceRow> Rows(JsonElement record, string place, string file)
    {
        var type = Text(record, "type");
        var isObject = type == "HumanMadeObject";
        var made = isObject ? One(record, "produced_by") : null;
        var maker = isObject
            ? made is { } produced ? Each(produced, "carried_out_by").Concat(Each(produced, "part").SelectMany(part => Each(part, "carried_out_by"))).Select(Label).FirstOrDefault(label => label is not null) : null
            : type is "Group" or "Person" ? Label(record) : null;
        if (maker is null)
        {
            yield break;
        }

        var from = Year(isObject ? made : One(record, "formed_by") ?? One(record, "born"), "begin_of_the_begin");
        var to = Year(isObject ? made : One(record, "dissolved_by") ?? One(record, "died"), "end_of_the_end");
        var address = Each(record, "residence").Select(Label).FirstOrDefault(label => label is not null);
        var forms = isObject ? Inscriptions(record) : Each(record, "identified_by").Where(name => Text(name, "type") == "Name").Select(name => Text(name, "content"));
        foreach (var form in forms.OfType<string>().Select(OneLine).Where(form => form.Length > 0).Distinct())
        {
            var values = ReferenceRow.NewValues();
            foreach (var (field, text) in new[] { (ReferenceField.Form, form), (ReferenceField.Maker, maker), (ReferenceField.Status, status), (ReferenceField.From, from), (ReferenceField.To, to), (ReferenceField.Address, address), (ReferenceField.Source, Text(record, "id") ?? file) })
            {
                if (text is not null)
                {
                    values[field] = text;
                }
            }

            yield return new ReferenceRow(place, values);
        }
    }

    private static IEnumerable<string?> Inscriptions(JsonElement record) => Each(record, "carries").Select(carried => Text(carried, "content"))
        .Concat(Each(record, "referred_to_by").Where(statement => Each(statement, "classified_as").Any(type => Text(type, "id")?.EndsWith(Inscription, StringComparison.Ordinal) == true)).Select(statement => Text(statement, "content")));

    private static string OneLine(string text) => string.Join(' ', text.Split(['\n', '\r', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));

    private static string? Label(JsonElement element) => Text(element, "_label") ?? Each(element, "identified_by").Select(name => Text(name, "content")).FirstOrDefault(content => content is not null);

    private static string? Year(JsonElement? activity, string end) =>
        activity is { } known && One(known, "timespan") is { } span && Text(span, end) is { Length: >= DigitsOfYear } date && date[..DigitsOfYear].All(char.IsAsciiDigit) ? date[..DigitsOfYear] : null;

    private static JsonElement? One(JsonElement element, string name) => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Object ? value : null;

    private static string? Text(JsonElement element, string name) => element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static JsonElement.ArrayEnumerator Each(JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var values) && values.ValueKind == JsonValueKind.Array ? values.EnumerateArray() : default;
}
