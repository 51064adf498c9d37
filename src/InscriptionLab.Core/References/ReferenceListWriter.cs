using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace InscriptionLab.References;

/// <summary>Writes a list so that <see cref="ReferenceListReader"/> reads the same rows again.</summary>
public static class ReferenceListWriter
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes CSV (RFC 4180, comma), every column named.</summary>
    /// <param name="forms">The rows.</param>
    public static string Csv(IEnumerable<ReferenceForm> forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        var text = new StringBuilder(string.Join(',', ReferenceField.All)).Append('\n');
        foreach (var form in forms)
        {
            text.AppendJoin(',', ReferenceColumns.Of(form).Select(Quoted)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Writes JSON after the schema of reference lists, one row a line.</summary>
    /// <param name="name">Name of the list.</param>
    /// <param name="forms">The rows.</param>
    public static string Json(string name, IEnumerable<ReferenceForm> forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        ImmutableArray<string> rows = [.. forms.Select(form => "    " + Row(form))];
        return $"{{\n  \"name\": {JsonSerializer.Serialize(name, Readable)},\n  \"forms\": [\n{string.Join(",\n", rows)}\n  ]\n}}\n";
    }

    /// <summary>Writes one row as a JSON object on one line.</summary>
    /// <param name="form">The row.</param>
    public static string Row(ReferenceForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return new JsonObject(ReferenceFieldText.Of(form).Select(field => KeyValuePair.Create<string, JsonNode?>(field.Field, Node(field.Field, field.Text)))).ToJsonString(Readable);
    }

    private static JsonValue? Node(string field, string text) =>
        ReferenceField.Years.Contains(field) ? JsonValue.Create(int.Parse(text, CultureInfo.InvariantCulture))
        : ReferenceField.Values.Contains(field) ? JsonValue.Create(double.Parse(text, CultureInfo.InvariantCulture))
        : JsonValue.Create(text);

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",;\"\n\r") >= 0 || text.Trim().Length != text.Length
        ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
        : text;
}
