using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>Writes records as JSON Lines: one object a line, UTF-8, letters as they are and not as escapes.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(PhotoRecord))]
[JsonSerializable(typeof(SetRecord))]
[JsonSerializable(typeof(MeasureRecord))]
internal sealed partial class JsonLines : JsonSerializerContext
{
    private static readonly JsonLines Readable = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Gives the line of one photo, without a line end.</summary>
    internal static string LineOf(PhotoRecord record) => JsonSerializer.Serialize(record, Readable.PhotoRecord);

    /// <summary>Gives the line of one set of photos, without a line end.</summary>
    internal static string LineOf(SetRecord record) => JsonSerializer.Serialize(record, Readable.SetRecord);

    /// <summary>Gives the line of one measured cell, without a line end.</summary>
    internal static string LineOf(MeasureRecord record) => JsonSerializer.Serialize(record, Readable.MeasureRecord);

    /// <summary>Reads the line of one photo.</summary>
    /// <exception cref="JsonException">It is no such line.</exception>
    internal static PhotoRecord PhotoOf(string line) => JsonSerializer.Deserialize(line, Readable.PhotoRecord) ?? throw new JsonException("The line is empty.");

    /// <summary>Reads the line of one set of photos.</summary>
    /// <exception cref="JsonException">It is no such line.</exception>
    internal static SetRecord SetOf(string line) => JsonSerializer.Deserialize(line, Readable.SetRecord) ?? throw new JsonException("The line is empty.");

    /// <summary>Reads the line of one measured cell.</summary>
    /// <exception cref="JsonException">It is no such line.</exception>
    internal static MeasureRecord MeasureOf(string line) => JsonSerializer.Deserialize(line, Readable.MeasureRecord) ?? throw new JsonException("The line is empty.");
}
