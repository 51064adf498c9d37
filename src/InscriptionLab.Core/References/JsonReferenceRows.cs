using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;

namespace InscriptionLab.References;

/// <summary>Cuts a JSON file into rows: an object whose list "forms" holds one object a row. Forms are counted from 1.</summary>
internal sealed class JsonReferenceRows(ReferenceFaults faults)
{
    private const string Forms = "forms";
    private const string Name = "name";

    /// <summary>Keys of the top level that say something of the file and nothing of a row.</summary>
    private static readonly string[] TopLevel = ["$schema", Name, "note", Forms];

    internal (string? Name, IReadOnlyList<ReferenceRow> Rows) Cut(string text)
    {
        try
        {
            return Rows(text);
        }
        catch (InvalidOperationException broken)
        {
            throw new Outcomes.InscriptionLabException(faults.Unreadable("holds a text with half a character (a lone \\ud800 to \\udfff); write that character whole.").Message, broken);
        }
    }

    private (string? Name, IReadOnlyList<ReferenceRow> Rows) Rows(string text)
    {
        using var document = Parse(text);
        var root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty(Forms, out var forms) || forms.ValueKind != JsonValueKind.Array)
        {
            throw faults.Unreadable("the top level must be an object with a list named forms, as in {\"name\": \"...\", \"forms\": [{\"form\": \"...\", \"maker\": \"...\", \"status\": \"attested\"}]}.");
        }

        foreach (var key in root.EnumerateObject().Select(property => property.Name).Where(key => !TopLevel.Contains(key)))
        {
            faults.Warn($"the field '{key}' is not known and is not used.");
        }

        var name = root.TryGetProperty(Name, out var named) && named.ValueKind == JsonValueKind.String ? named.GetString() : null;
        var rows = new List<ReferenceRow>();
        foreach (var element in forms.EnumerateArray())
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"form {rows.Count + 1}");
            rows.Add(new ReferenceRow(place, Values(place, element)));
        }

        return (name, rows);
    }

    private JsonDocument Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text, new JsonDocumentOptions { AllowDuplicateProperties = false });
        }
        catch (JsonException broken) when (broken.LineNumber is { } line && broken.BytePositionInLine is { } position)
        {
            throw new Outcomes.InscriptionLabException(
                faults.Unreadable(string.Create(CultureInfo.InvariantCulture, $"is not JSON at line {line + 1}, byte {position + 1}; look there for a missing comma, bracket or quotation mark.")).Message,
                broken);
        }
        catch (JsonException broken)
        {
            throw new Outcomes.InscriptionLabException(faults.Unreadable("is not valid JSON: a field is named twice in one object, or the nesting is too deep.").Message, broken);
        }
    }

    private Dictionary<string, string> Values(string place, JsonElement element)
    {
        var values = ReferenceRow.NewValues();
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Error(place, "must be an object with the fields form, maker and status.");
            return values;
        }

        foreach (var property in element.EnumerateObject())
        {
            var isYear = ReferenceField.Years.Contains(property.Name);
            var isNumber = isYear || ReferenceField.Values.Contains(property.Name);
            if (!ReferenceField.All.Contains(property.Name))
            {
                faults.Warn(place, $"the field '{property.Name}' is not known and is not used; known are {string.Join(", ", ReferenceField.All)}.");
            }
            else if (property.Value.ValueKind == JsonValueKind.Null)
            {
                continue;
            }
            else if (property.Value.ValueKind != (isNumber ? JsonValueKind.Number : JsonValueKind.String))
            {
                faults.Error(place, property.Name, isYear ? "must be a year as a number, without quotation marks." : isNumber ? "must be a number, without quotation marks." : "must be text in quotation marks.");
            }
            else
            {
                values[property.Name] = isNumber ? property.Value.GetRawText() : property.Value.GetString() ?? string.Empty;
            }
        }

        return values;
    }
}
